export const DATUM = "Tarrowmere datum";
