import type { Json, JsonObject } from "@causey/engine/formula";
import type { Kit } from "@causey/engine/kit";
import type { Plan } from "@causey/engine/plan";
import { parseJson } from "../json/index.ts";
import type { Findings } from "../problem/index.ts";
import type { PlaceDefaults } from "../vector/index.ts";
import { reportIssues } from "./issues.ts";
import { resolveKit } from "./kit-choice.ts";
import { migrate } from "./migrations.ts";
import { planWithKitSchema, planWithReadyKitSchema, sitePartSchemas } from "./plan-schema.ts";

const BYTE_LIMIT = 10_000_000;

/** What plan.json says: everything but places and zones. */
export type PlanDocument = Omit<Plan, "starts" | "plots" | "zones">;

/** The entries by which the other files are read; null where plan.json is wrong or silent. */
export interface SiteEntries {
  readonly crs: Plan["crs"] | null;
  readonly terrain: Plan["terrain"] | null;
  readonly prices: Plan["prices"] | null;
  readonly plot_defaults: PlaceDefaults;
}

export interface DocumentRead {
  /** Null after a fault, which is then among the findings. */
  readonly document: PlanDocument | null;
  readonly entries: SiteEntries;
}

/**
 * Reads plan.json: syntax, schema number, schema, kit. Faults go to the findings; what is sound enough to read the
 * other files by is returned even then, so that one reading lists the faults of all files. Throws `ProblemError`
 * when the file is no JSON object or of a schema that is not known.
 */
export function readDocument(found: Findings, bytes: Uint8Array, readyKits: readonly Kit[]): DocumentRead {
  const raw = parseJson(found, bytes, BYTE_LIMIT);
  if (!isObject(raw))
    return found.stop({
      code: "plan-schema",
      place: "document",
      value: raw,
      message: "plan.json must be an object in curly brackets.",
      mend: 'Start from a fresh folder ("causey new"), or from an example.',
    });
  const current = migrate(found, raw);
  return {
    document: namesReadyKit(current) ? withReadyKit(found, current, readyKits) : withKit(found, current),
    entries: {
      crs: sitePartSchemas.crs.safeParse(current["crs"]).data ?? null,
      terrain: sitePartSchemas.terrain.safeParse(current["terrain"]).data ?? null,
      prices: sitePartSchemas.prices.safeParse(current["prices"]).data ?? null,
      plot_defaults: sitePartSchemas.plot_defaults.safeParse(current["plot_defaults"]).data ?? {},
    },
  };
}

const isObject = (v: Json | undefined): v is JsonObject =>
  typeof v === "object" && v !== null && !Array.isArray(v);

const namesReadyKit = (document: JsonObject): boolean => {
  const kit = document["kit"];
  return isObject(kit) && Object.hasOwn(kit, "ready");
};

function withKit(found: Findings, document: JsonObject): PlanDocument | null {
  const parsed = planWithKitSchema.safeParse(document);
  if (!parsed.success) return report(found, document, parsed.error.issues);
  const { plot_defaults: _, ...plan } = parsed.data;
  return plan;
}

function withReadyKit(found: Findings, document: JsonObject, readyKits: readonly Kit[]): PlanDocument | null {
  const parsed = planWithReadyKitSchema.safeParse(document);
  if (!parsed.success) return report(found, document, parsed.error.issues);
  const { plot_defaults: _, kit: choice, ...plan } = parsed.data;
  const kit = resolveKit(found, choice, readyKits);
  return kit === null ? null : { ...plan, kit };
}

function report(found: Findings, document: JsonObject, issues: Parameters<typeof reportIssues>[2]): null {
  reportIssues(found, document, issues);
  return null;
}
