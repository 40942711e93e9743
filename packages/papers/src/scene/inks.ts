import type { Ink } from "./types.ts";

/** Colours of the inks on white paper: dark enough to be read when printed in black. */
export const inks: Readonly<Record<Ink, string>> = {
  ink: "#1c282b",
  second: "#5b676a",
  rule: "#b9b6aa",
  water: "#1c5d7d",
  plants: "#57733a",
  warning: "#9a7411",
  closed: "#a2492a",
  earth: "#6d5a3a",
};

const pale: Readonly<Record<Ink, string>> = {
  ink: "#e3e5e5",
  second: "#eeefef",
  rule: "#f6f5f1",
  water: "#d5e6ee",
  plants: "#eef2e4",
  warning: "#f5e9c5",
  closed: "#f3ddd2",
  earth: "#ece6d8",
};

/** A tint of an ink for areas. */
export const paleOf = (ink: Ink): string => pale[ink];
