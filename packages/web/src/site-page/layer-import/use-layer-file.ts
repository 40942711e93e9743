import type { Problem } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import type { Crs } from "@causey/engine/site";
import { readLayers, type VectorLayer } from "@causey/io/layers";
import { useRef, useState } from "react";
import { crsOf } from "@causey/io/crs";
import { bytesOf, problemsOf } from "../../files/chosen-file.ts";
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
    const bytes = await bytesOf(file, "Export only the layers that touch the site.");
    const crs = await crsOf(plan.crs);
    const layers = await readLayers(file.name, bytes, sqlite);
    return { file: { name: file.name, crs, ...layers }, refused: [] };
  } catch (error) {
    return { file: null, refused: problemsOf(file.name, error, "export it in another format") };
  }
}
