import { number } from "../formula/fields.ts";

/** Fields that several flood calculations share. */
export const waterField = number("water_kg_m3", "Density of the water", 900, 1100);
export const speedField = number("speed_m_s", "Speed of the water", 0, 10);
export const depthField = number("depth_mm", "Depth of the water", 1, 20_000);
