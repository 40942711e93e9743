import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import type { Crs } from "@causey/engine/site";
import { FILE_LIMITS } from "@causey/io/files";
import { readLayers, type VectorLayer } from "@causey/io/layers";
import { useRef, useState } from "react";
import { crsOf } from "@causey/io/crs";
import { sqlite } from "../../files/sqlite.ts";

export interface LayerFile {
  readonly name: string;
  readonly layers: readonly VectorLayer[];
  readonly warnings: readonly Problem[];
  /** The system of the site that the layers are brought into. */
  readonly crs: Crs;
}

interface Reading {
  readonly file: LayerFile | null;
  readonly refused: readonly Problem[];
  readonly isReading: boolean;
}

/** Reads the file that is chosen last; one that cannot be used leaves its problems. */
export function useLayerFile(
  plan: Plan,
): Reading & { readonly take: (file: File) => Promise<LayerFile | null> } {
  const [reading, setReading] = useState<Reading>({ file: null, refused: [], isReading: false });
  const turn = useRef(0);

  const take = async (file: File): Promise<LayerFile | null> => {
    const mine = ++turn.current;
    setReading({ file: null, refused: [], isReading: true });
    const answer = await read(file, plan);
    if (mine !== turn.current) return null;
    setReading({ ...answer, isReading: false });
    return answer.file;
  };
  return { ...reading, take };
}

async function read(file: File, plan: Plan): Promise<Pick<Reading, "file" | "refused">> {
  try {
    if (file.size > FILE_LIMITS.file_bytes) throw new ProblemError([tooLarge(file)]);
    const crs = await crsOf(plan.crs);
    const layers = await readLayers(file.name, new Uint8Array(await file.arrayBuffer()), sqlite);
    return { file: { name: file.name, crs, ...layers }, refused: [] };
  } catch (error) {
    if (error instanceof ProblemError) return { file: null, refused: error.problems };
    return { file: null, refused: [unreadable(file, error)] };
  }
}

const tooLarge = (file: File): Problem => ({
  code: "file-size",
  severity: "error",
  file: file.name,
  place: "file",
  value: `${Math.round(file.size / 1e6)} MB`,
  message: `The file is larger than the ${Math.round(FILE_LIMITS.file_bytes / 1e6)} MB that are read.`,
  mend: "Export only the layers that touch the site.",
});

const unreadable = (file: File, error: unknown): Problem => ({
  code: "file-unreadable",
  severity: "error",
  file: file.name,
  place: "file",
  value: "",
  message: `The file could not be read: ${error instanceof Error ? error.message : String(error)}`,
  mend: "Choose it once more; if that does not help, export it in another format.",
});
