import type { ZoneUse } from "../site/index.ts";
import type { Plan } from "./document.ts";
import type { Edit, Section } from "./edit.ts";

const added: Readonly<Record<ZoneUse, string>> = {
  habitat: "Marked a habitat",
  closed: "Closed an area",
  "seasonal-closure": "Closed an area for a season",
  buffer: "Marked a buffer",
  "soft-ground": "Marked soft ground",
  channel: "Marked a channel",
  pool: "Marked a pool",
  parcel: "Marked a parcel",
};

const removed: Readonly<Record<ZoneUse, string>> = {
  habitat: "Removed a habitat",
  closed: "Opened an area",
  "seasonal-closure": "Lifted a seasonal closure",
  buffer: "Removed a buffer",
  "soft-ground": "Removed soft ground",
  channel: "Removed a channel",
  pool: "Removed a pool",
  parcel: "Removed a parcel",
};

const unitWords: Readonly<Record<Plan["units"], string>> = { us: "feet and inches", metric: "metric" };

/** What each section is called on the pages. */
const sectionWords: Readonly<Record<Section, string>> = {
  site_name: "the site's name",
  request: "the access request",
  survey: "the survey",
  water: "the water records",
  rules: "the rules",
  papers: "the title block",
  photo: "the photo",
  terrain: "the terrain",
  prices: "the price list",
  laying: "the days of laying",
  removal: "the day of removal",
  starts: "the starts",
  plots: "the plots",
  zones: "the zones",
  levels: "the water levels",
  flood_level: "the flood to be held",
  water_kg_m3: "the density of the water",
  ground: "the strength of the ground",
  proof: "what is proven besides the visits",
  code: "the design code",
  visits: "the visits",
  saw: "the saw",
  money: "the money",
};

/**
 * One line of plain words for the history and the undo button: "Moved Plot 2", "Closed an area: tern colony".
 *
 * plan  the document the edit was made on; an id that it does not know is shown as it stands
 * Names of hidden zones appear: this line is for the plan's own pages, never for a shared paper.
 */
export function describeEdit(edit: Edit, plan: Plan): string {
  switch (edit.type) {
    case "move-plot":
      return `Moved ${nameOf(plan.plots, edit.plot)}`;
    case "move-start":
      return `Moved ${nameOf(plan.starts, edit.start)}`;
    case "set-plot-reach":
      return `Changed the reach of ${nameOf(plan.plots, edit.plot)}`;
    case "add-zone":
      return `${added[edit.zone.use]}: ${edit.zone.name}`;
    case "remove-zone":
      return describeRemoval(edit.zone, plan);
    case "set-weights":
      return "Changed the weights of the layout";
    case "set-layout":
      return "Changed the layout's settings";
    case "set-visit":
      return `Changed the visit: ${edit.visit.name}`;
    case "set-kit":
      return `Changed the kit: ${edit.kit.name}`;
    case "set-units":
      return `Switched to ${unitWords[edit.units]}`;
    case "rename":
      return `Renamed the plan: ${edit.name}`;
    case "set-price-list":
      return edit.currency === plan.money.currency
        ? "Changed the price list"
        : `Changed the price list, now in ${edit.currency}`;
    case "set-section":
      return `Changed ${sectionWords[edit.section]}`;
  }
}

const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  list.find((item) => item.id === id)?.name ?? id;

function describeRemoval(id: string, plan: Plan): string {
  const zone = plan.zones.find((z) => z.id === id);
  return zone ? `${removed[zone.use]}: ${zone.name}` : `Removed a zone: ${id}`;
}
