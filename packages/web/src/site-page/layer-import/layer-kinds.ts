import type { Plan } from "@causey/engine/plan";
import type { ZoneUse } from "@causey/engine/site";

/** Which list of the plan a layer is brought into. */
export type LayerTarget = "zones" | "starts" | "plots";

/** One value besides id and name that every feature gets: the same for all, or from a field of its own. */
export interface WantedValue {
  readonly key: string;
  readonly label: string;
  readonly description?: string;
  readonly as: "use" | "text" | "yes" | "number" | "length" | "side" | "month-day";
  /** Only areas of these rules have it; left out where all features do. */
  readonly uses?: readonly ZoneUse[];
  readonly required?: boolean;
}

/** What a habitat's number does; which number is right is for the site's ecologist to say. */
export const HARM_WORDS =
  "Plain upland grass is 1. At 3 each square metre that is shaded or stood on counts as three, so the search keeps off it sooner. Ask the ecologist.";

interface TargetWords {
  readonly title: string;
  /** What one feature becomes. */
  readonly noun: string;
  /** The shape that a feature must have. */
  readonly shape: "area" | "point";
  readonly values: readonly WantedValue[];
}

export const layerTargets: Readonly<Record<LayerTarget, TargetWords>> = {
  zones: {
    title: "Areas from a file",
    noun: "area",
    shape: "area",
    values: [
      { key: "use", label: "Rule", as: "use", required: true },
      {
        key: "source",
        label: "Source",
        description: "Who drew them, when and from what.",
        as: "text",
        required: true,
      },
      {
        key: "hidden",
        label: "Hidden",
        description: "Used in the search, never in a shared paper.",
        as: "yes",
      },
      {
        key: "sensitivity",
        label: "Harm per area, of habitats",
        description: HARM_WORDS,
        as: "number",
        uses: ["habitat"],
      },
      { key: "from", label: "First day", as: "month-day", uses: ["seasonal-closure"] },
      { key: "to", label: "Last day", as: "month-day", uses: ["seasonal-closure"] },
      {
        key: "buffer_m",
        label: "Kept clear around them",
        description: "A field is read in metres.",
        as: "length",
        uses: ["closed", "seasonal-closure", "buffer", "soft-ground", "channel", "pool"],
      },
      { key: "owner", label: "Owner", as: "text", uses: ["parcel"] },
      { key: "contact", label: "Whom to ask", as: "text" },
    ],
  },
  starts: { title: "Starts from a file", noun: "start", shape: "point", values: [] },
  plots: {
    title: "Plots from a file",
    noun: "plot",
    shape: "point",
    values: [
      {
        key: "keep_off_m",
        label: "Keep off, all round",
        description: "The default of new plots stands here. A field is read in metres.",
        as: "length",
        required: true,
      },
      {
        key: "reach_m",
        label: "Reached from",
        description:
          "Farthest beyond the keep-off line; the default of new plots stands here. A field is read in metres.",
        as: "length",
        required: true,
      },
      { key: "arrive_from", as: "side", label: "Arrive from" },
    ],
  },
};

/** What the plan holds of one kind now. */
export const itemsOf = (
  plan: Plan,
  target: LayerTarget,
): readonly { readonly id: string; readonly name: string }[] => plan[target];
