import type { Source } from "../formula/index.ts";

export const surveyMethod: Source = {
  id: "causey-survey",
  title: "Project method: heights and their bands from survey points (docs/methods/survey.md)",
  status: "project",
};

export const predictionInterval: Source = {
  id: "normal-prediction-interval",
  title: "Prediction interval of one more value of a normal sample, Student's t",
  at: "t * s * sqrt(1 + 1/n); for a median the variance of the centre is pi/2 times larger",
  status: "memory",
};

export const sensitivitySource: Source = {
  id: "vane-sensitivity",
  title: "Sensitivity of soft ground: peak over remoulded vane strength",
  status: "memory",
};

export const owner: Source = { id: "plan-survey", title: "The plan's survey", status: "project" };
