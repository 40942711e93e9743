import type { Source } from "../formula/index.ts";

export const skempton: Source = {
  id: "skempton-1951",
  title: "Skempton's bearing capacity of clay (worked answers at byjus.com and indiabix.com)",
  at: "net = 5 su (1 + 0.2 B/L) (1 + 0.2 D/B), D/B <= 2.5, at most 9 su",
  status: "seen",
};

export const terzaghi: Source = {
  id: "terzaghi-square",
  title: "Terzaghi's bearing capacity of a square footing on clay (worked answer at sarthaks.com 2516218)",
  at: "1.3 x 5.7 c",
  status: "seen",
};
