import type { CheckResult } from "@causey/engine/checks";
import type { Results } from "@causey/engine/plan";
import { showQuantity, showShareOfLimit } from "@causey/engine/units";
import type { Block } from "../text/index.ts";
import { textSheet } from "./text-sheet.ts";
import { memory, partWords, stepBlock } from "./working-blocks.ts";

const statusWords: Readonly<Record<CheckResult["status"], string>> = {
  pass: "meets the rule",
  fail: "does not meet it",
  "cannot-check": "cannot be checked",
  "not-applicable": "does not apply",
};

/** Every check with its share of the limit and what it says backwards. */
export const checkSheet = textSheet(
  {
    id: "checks",
    title: "Check summary",
    about: "Every check: demand, capacity, share of the limit, rule and source.",
  },
  ({ results, plan }) => [
    {
      kind: "text",
      text: "Demand over capacity; above 1 the chosen rule is not met. Checks that cannot be made name what is missing and are never counted as met.",
    },
    {
      kind: "table",
      columns: [
        { head: "Check", share: 3.6 },
        { head: "Parts", share: 2.4 },
        { head: "Answer", share: 1.9 },
        { head: "Demand", share: 1.8, align: "end" },
        { head: "Capacity", share: 1.8, align: "end" },
        { head: "Share", share: 1.1, align: "end" },
        { head: "Rule", share: 5.4 },
      ],
      rows: results.checks.map((c) => rowOf(c, plan.units)),
    },
    { kind: "head", text: "What does not meet its rule, or cannot be checked" },
    ...results.checks.flatMap((c): Block[] => {
      if (c.status === "fail")
        return [
          {
            kind: "text",
            bullet: true,
            text: `${c.title}: ${c.backwards.carries} ${c.backwards.change ?? ""} ${c.caution}`,
          },
        ];
      if (c.status === "cannot-check")
        return [{ kind: "text", bullet: true, text: `${c.title}: missing ${c.missing.join("; ")}.` }];
      return [];
    }),
    ...engineerBlocks(results),
    ...clashBlocks(results),
    { kind: "head", text: "Who must confirm what" },
    ...results.cautions.map((text): Block => ({ kind: "text", text, bullet: true })),
  ],
);

/** Limits past which an engineer must look, each with its parts and source. */
const engineerBlocks = ({ engineer }: Results): Block[] =>
  engineer.length === 0
    ? []
    : [
        { kind: "head", text: "A licensed engineer must look at" },
        ...engineer.map((flag): Block => ({
          kind: "text",
          bullet: true,
          text: `${flag.title}: ${flag.because} (${partWords(flag.parts)}). ${flag.source.title}${flag.source.at ? `, ${flag.source.at}` : ""}${memory(flag.source)}.`,
        })),
      ];

/** Rules in play that cannot be met together with those of another profile. */
const clashBlocks = ({ clashes }: Results): Block[] =>
  clashes.length === 0
    ? []
    : [
        { kind: "head", text: "Where the chosen rules clash with other profiles" },
        ...clashes.map((text): Block => ({ kind: "text", bullet: true, text })),
      ];

function rowOf(c: CheckResult, units: "us" | "metric"): string[] {
  const rule = `${c.rule.title}${c.rule.at ? `, ${c.rule.at}` : ""}${memory(c.rule)}`;
  const parts = partWords(c.parts);
  const [demand, capacity, share] =
    c.status === "pass" || c.status === "fail"
      ? [
          showQuantity(c.demand, c.unit, units),
          showQuantity(c.capacity, c.unit, units),
          showShareOfLimit(c.utilisation),
        ]
      : ["", "", ""];
  return [c.title, parts, statusWords[c.status], demand!, capacity!, share!, rule];
}

/** Every figure and check with its working, step by step. */
export const workingSheet = textSheet(
  {
    id: "workings",
    title: "Calculation appendix",
    about: "The working of every figure and check: formula, numbers with units, source.",
  },
  ({ results, plan }) => [
    {
      kind: "text",
      text: "Each step: what it is, its formula, its numbers, its result, its source. The same working opens on the screen.",
    },
    ...results.figures
      .filter((f) => f.working.length > 0)
      .flatMap((f): Block[] => [
        { kind: "head", text: `${f.title}: ${showQuantity(f.value, f.unit, plan.units)}` },
        ...f.working.map((step) => stepBlock(step, plan.units)),
      ]),
    ...results.checks.flatMap((c): Block[] =>
      c.status === "pass" || c.status === "fail"
        ? [
            { kind: "head", text: c.title },
            { kind: "text", text: `Governs: ${c.governs}.`, quiet: true },
            ...c.working.map((step) => stepBlock(step, plan.units)),
          ]
        : [],
    ),
  ],
);
