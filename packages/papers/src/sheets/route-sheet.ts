import type { RouteFacts } from "@causey/engine/layout";
import { levelText, shower } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import { noCrossingWords } from "../summary/index.ts";
import type { Block } from "../text/index.ts";
import { textSheet } from "./text-sheet.ts";

/** What a permit form asks of one route: owners, water, sensitive ground, plots, and the lines of the water. */
export const routeSheet = textSheet(
  {
    id: "route",
    title: "What the route crosses",
    about:
      "Length, shade and contact; owners, crossings, sensitive ground, plots; water lines with their sources.",
  },
  (context) => [
    ...figureBlocks(context),
    ...ownerBlocks(context),
    ...crossingBlocks(context),
    ...sensitiveBlocks(context),
    ...plotBlocks(context),
    ...levelBlocks(context),
  ],
);

type Show = ReturnType<typeof shower>;

function figureBlocks({ plan, results }: PaperContext): Block[] {
  const { evaluation: e, route } = results;
  const show = shower(plan);
  return [
    {
      kind: "rows",
      rows: [
        ["Length of walkway", show(e.length_m, "m")],
        ["Shaded ground", show(e.shaded_m2, "m2")],
        ["Ground touched by supports", `${show(e.contact_m2, "m2")}, ${e.joints} supports`],
        ["Length over sensitive ground", show(route.sensitive_m, "m")],
        [
          "Crossings of channels, ditches and pools",
          route.crossings.length === 0 ? noCrossingWords(plan) : String(route.crossings.length),
        ],
        ["Custom parts", route.custom_parts.join(", ") || route.custom_because],
      ],
    },
  ];
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

const none = (text: string): Block => ({ kind: "text", text });

function ownerBlocks({ plan, results: { route } }: PaperContext): Block[] {
  const show = shower(plan);
  return [
    { kind: "head", text: "Owners of the ground crossed" },
    ...(route.parcels.length === 0
      ? [none("No parcel is given under the route: who owns the ground is not known here.")]
      : [ownerTable(route, show)]),
  ];
}

const ownerTable = ({ parcels, no_parcel_m }: RouteFacts, show: Show): Block => ({
  kind: "table",
  columns: [
    { head: "Parcel", share: 2 },
    { head: "Owner", share: 2.4 },
    { head: "Length", share: 1.3, align: "end" },
    { head: "Area over it", share: 1.3, align: "end" },
    { head: "Parts", share: 3 },
  ],
  rows: [
    ...parcels.map((p) => [
      p.name,
      p.owner ?? "not told",
      show(p.length_m, "m"),
      show(p.area_m2, "m2"),
      p.parts.join(", "),
    ]),
    ...(no_parcel_m > 0.005 ? [["outside every parcel", "not known", show(no_parcel_m, "m"), "", ""]] : []),
  ],
});

function crossingBlocks({ plan, results: { route } }: PaperContext): Block[] {
  const show = shower(plan);
  return [
    { kind: "head", text: "Water crossed" },
    ...(route.crossings.length === 0
      ? [none(`${capital(noCrossingWords(plan))}.`)]
      : [
          {
            kind: "table",
            columns: [
              { head: "Water", share: 2.4 },
              { head: "Type", share: 1.2 },
              { head: "Part over it", share: 1.4 },
              { head: "Clear width along the line", share: 2.2, align: "end" },
              { head: "At, east and north", share: 2.6, align: "end" },
            ],
            rows: route.crossings.map((c) => [
              c.name,
              c.type,
              c.part,
              show(c.width_m, "m"),
              c.at.map((v) => `${v.toFixed(1)} m`).join(", "),
            ]),
          } as const,
        ]),
  ];
}

function sensitiveBlocks({ plan, results: { route } }: PaperContext): Block[] {
  if (route.sensitive.length === 0) return [];
  const show = shower(plan);
  return [
    { kind: "head", text: "Sensitive ground" },
    {
      kind: "rows",
      rows: route.sensitive.map(
        (s) =>
          [
            `${s.name}, ${Number(s.sensitivity.toFixed(1))} times plain ground`,
            show(s.length_m, "m"),
          ] as const,
      ),
    },
  ];
}

function plotBlocks({ plan, results: { route } }: PaperContext): Block[] {
  const show = shower(plan);
  return [
    { kind: "head", text: "Plots" },
    {
      kind: "rows",
      rows: route.plots.map(
        (p) =>
          [
            plan.plots.find((q) => q.id === p.plot)?.name ?? p.plot,
            p.nearest_m === null
              ? "no part is laid"
              : `nearest part or foot ${show(p.nearest_m, "m")}, to keep off ${show(p.keep_off_m, "m")}; inside the keep-off circle ${show(p.overlap_m2, "m2")}`,
          ] as const,
      ),
    },
  ];
}

/** Mean high water, high tide line and ordinary high water stay apart: each bounds another rule. */
function levelBlocks({ plan }: PaperContext): Block[] {
  return [
    { kind: "head", text: "Lines of the water" },
    ...(plan.levels.length === 0
      ? [none("No level is given: no water line can be drawn.")]
      : [
          {
            kind: "table",
            columns: [
              { head: "Line", share: 2.2 },
              { head: "Level", share: 1.1, align: "end" },
              { head: "Datum", share: 1.6 },
              { head: "How known", share: 1.2 },
              { head: "Years", share: 1.4 },
              { head: "Source", share: 3 },
            ],
            rows: plan.levels.map((l) => [
              l.name,
              levelText(l.z_m, plan),
              l.datum,
              l.basis === "predicted" ? "predicted, no wind" : l.basis,
              l.epoch.trim() === "" ? "years not known" : l.epoch,
              l.source,
            ]),
          } as const,
        ]),
  ];
}
