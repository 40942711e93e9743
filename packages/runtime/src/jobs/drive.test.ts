import type { Job, Progress } from "@causey/engine/formula";
import { describe, expect, test } from "vitest";
import { drive, nextTurn } from "./drive.ts";

function* count(to: number, onClose: () => void = () => {}): Job<number> {
  try {
    for (let done = 1; done <= to; done++) yield { done, total: to, note: "Counting" };
    return to;
  } finally {
    onClose();
  }
}
const neverCancelled = { aborted: false };

describe("drive", () => {
  test("runs a job to its value, reporting every slice and pausing after each", async () => {
    const reports: Progress[] = [];
    let pauses = 0;
    const pause = async (): Promise<void> => void pauses++;
    const driven = await drive(count(3), neverCancelled, (p) => reports.push(p), pause);
    expect(driven).toEqual({ ok: true, value: 3 });
    expect(reports.map((p) => p.done)).toEqual([1, 2, 3]);
    expect(pauses).toBe(3);
  });

  test("a cancel heard during a pause stops the job and closes it", async () => {
    const cancel = { aborted: false };
    let closed = 0;
    const seen: number[] = [];
    const driven = await drive(
      count(1000, () => closed++),
      cancel,
      (p) => seen.push(p.done),
      async () => {
        if (seen.length === 2) cancel.aborted = true;
      },
    );
    expect(driven).toEqual({ ok: false, why: "cancelled" });
    expect(seen).toEqual([1, 2]);
    expect(closed).toBe(1);
  });

  test("a job cancelled beforehand never starts", async () => {
    let started = false;
    function* job(): Job<void> {
      started = true;
      yield { done: 0, total: 1, note: "" };
    }
    const driven = await drive(job(), { aborted: true }, () => {}, nextTurn);
    expect(driven).toEqual({ ok: false, why: "cancelled" });
    expect(started).toBe(false);
  });

  test("what the job throws comes out, and what the report throws closes the job", async () => {
    function* failing(): Job<void> {
      yield { done: 0, total: 1, note: "" };
      throw new RangeError("no such reach");
    }
    await expect(drive(failing(), neverCancelled, () => {}, nextTurn)).rejects.toThrow("no such reach");
    let closed = 0;
    const report = (): void => {
      throw new Error("page is gone");
    };
    await expect(
      drive(
        count(5, () => closed++),
        neverCancelled,
        report,
        nextTurn,
      ),
    ).rejects.toThrow("page is gone");
    expect(closed).toBe(1);
  });

  test("an AbortSignal cancels through the thread's own queue", async () => {
    const abort = new AbortController();
    setTimeout(() => abort.abort(), 0);
    const driven = await drive(count(1_000_000), abort.signal, () => {});
    expect(driven).toEqual({ ok: false, why: "cancelled" });
  });
});
