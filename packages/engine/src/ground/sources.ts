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

const memory = (id: string, title: string, at: string): Source => ({ id, title, at, status: "memory" });
const project = (at: string): Source => ({
  id: "causey-soft-ground",
  title: "Project decision on soft ground (docs/methods/soft-ground.md)",
  at,
  status: "project",
});

export const meyerhof = memory(
  "meyerhof-1953",
  "Meyerhof, bearing capacity under eccentric loads: effective width",
  "B' = B - 2 e",
);
export const circleUnderEdgeLoad = memory(
  "effective-circle",
  "Effective area of a round foot under an off-centre load, as offshore foundation practice has it",
  "the lens that is symmetric about the load, then a rectangle of its area and its ratio of sides",
);
export const twoToOne = memory(
  "two-to-one-spread",
  "Load spread 2:1 through a stiff layer over a weaker one",
  "q' = q B L / ((B + t)(L + t)), held against the capacity of the mud",
);
export const statics: Source = {
  id: "statics",
  title: "Statics of a stiff support on its feet",
  status: "computed",
};
export const bearingRule = project(
  "3 on su for people, 2 for a load of one day, stop under 3 kPa without measuring",
);
export const rigidFootTilt: Source = {
  id: "stiff-foot-on-sinkage",
  title: "Stiff foot pressed into ground that answers by the pressure-sinkage law at every point",
  at: "worked out here from load and moment",
  status: "computed",
};
export const peatVane: Source = {
  id: "peat-vane-factor",
  title: "Field vane in peat reads high (scribd.com 603015346 and 470152623)",
  at: "published factors 0.26 to 0.69 and unreliable; 0.5 is used",
  status: "seen",
};
export const bjerrum = memory(
  "bjerrum-1972",
  "Bjerrum's correction of the field vane by plasticity index",
  "mu = 1.7 - 0.54 log10(PI), PI 20 to 120, never over 1",
);
export const coneFactor = memory(
  "cone-factor",
  "Cone resistance to undrained strength by the cone factor Nkt",
  "su = (qc - sigma_v) / Nkt; soft clay 14 (10 to 18), peat 16 (11 to 22)",
);
export const bekker: Source = {
  id: "bekker-wong-2008",
  title: "Bekker's pressure-sinkage law with the values of Wong, Theory of Ground Vehicles (2008)",
  at: "p = (kc / b + kphi) z^n, b the smaller side",
  status: "seen",
};
export const muskegSource = memory(
  "wong-muskeg",
  "Pressure and sinkage of muskeg with a living mat, after Wong (1980s); values to be verified",
  "p = kp z + 4 mm z^2 / Dh, Dh = 4 A / perimeter",
);
export const plateFit = memory(
  "wong-weighted-fit",
  "Weighted least squares of ln p on ln z with weights p^2, after Wong",
  "k of each plate, then kc and kphi from k = kc / b + kphi",
);
export const consolidation = memory(
  "consolidation",
  "Settlement by one-dimensional consolidation and secondary compression",
  "S = H Cc/(1+e0) log10((s0+ds)/s0); S = H Ca/(1+e0) log10(t/tp)",
);
export const rigidPunch = memory(
  "boussinesq-punch",
  "Surface of an elastic half-space around a stiff round foot (Boussinesq)",
  "w(r) = 2/pi asin(a/r) w0",
);
export const walkingPressure: Source = {
  id: "walking-pressure",
  title: "Ground pressure of a walking person (liquisearch.com/ground_pressure)",
  at: "60 to 80 kPa",
  status: "seen",
};
export const footOnGround: Source = {
  id: "foot-pressure",
  title: "Pressure of a person standing (socratic.org 58bd70927c0149140a038469)",
  at: "both feet 0.0258 m2; one foot half of it, drawn as 250 x 52 mm",
  status: "seen",
};
export const influence = memory(
  "depth-of-influence",
  "Depth below a foot that its bearing feels",
  "about 1.5 B",
);
export const strengthScatter = memory(
  "strength-scatter",
  "Scatter of undrained strength in one soft deposit, coefficient of variation 0.2 to 0.5 (after Phoon and Kulhawy)",
  "0.35 as the standard deviation of ln su, worth 3 degrees of freedom",
);
export const alongLine = memory(
  "strength-along-line",
  "Horizontal scale over which vane strengths stay alike, some tens of metres (after Phoon and Kulhawy)",
  "correlation exp(-d / 20 m); 0.3 of the variance is scatter within one place",
);
export const modelFactor = memory(
  "bearing-model-factor",
  "Error of the bearing formula itself against loading tests",
  "lognormal, median 1, standard deviation of ln 0.2",
);
export const bandMethod: Source = {
  id: "causey-strength-band",
  title: "Project method: strength along a walkway as a distribution (docs/methods/soft-ground.md)",
  at: "conjugate normal-inverse-chi-square, Student-t predictive",
  status: "project",
};
