import { ProblemError, type Problem } from "@causey/engine/formula";
import { FILE_LIMITS } from "@causey/io/files";
import { lookAtTerrain, type TerrainLook } from "@causey/io/fresh";
import { useRef, useState } from "react";

interface Looking {
  readonly look: TerrainLook | null;
  readonly refused: readonly Problem[];
  readonly isReading: boolean;
}

export interface TerrainFile extends Looking {
  readonly take: (file: File) => Promise<TerrainLook | null>;
  /** Reads the file that is there once more, with its heights in another unit. */
  readonly takeUnit: (unit: "m" | "ft") => Promise<void>;
}

/** Reads the terrain file that is chosen last; one that cannot be used leaves its problems. */
export function useTerrainLook(): TerrainFile {
  const [looking, setLooking] = useState<Looking>({ look: null, refused: [], isReading: false });
  const turn = useRef(0);

  const read = async (run: () => Promise<TerrainLook>, name: string): Promise<TerrainLook | null> => {
    const mine = ++turn.current;
    setLooking({ ...looking, refused: [], isReading: true });
    const answer = await attempt(run, name);
    if (mine !== turn.current) return null;
    setLooking({ ...answer, isReading: false });
    return answer.look;
  };
  return {
    ...looking,
    take: (file) =>
      read(async () => {
        if (file.size > FILE_LIMITS.file_bytes) throw new ProblemError([tooLarge(file)]);
        return lookAtTerrain(file.name, new Uint8Array(await file.arrayBuffer()));
      }, file.name),
    takeUnit: async (unit) => {
      const { look } = looking;
      if (look !== null) await read(() => lookAtTerrain(look.name, look.bytes, unit), look.name);
    },
  };
}

async function attempt(
  run: () => Promise<TerrainLook>,
  name: string,
): Promise<Pick<Looking, "look" | "refused">> {
  try {
    return { look: await run(), refused: [] };
  } catch (error) {
    if (error instanceof ProblemError) return { look: null, refused: error.problems };
    return { look: null, refused: [unreadable(name, error)] };
  }
}

const tooLarge = (file: File): Problem => ({
  code: "file-size",
  severity: "error",
  file: file.name,
  place: "file",
  value: `${Math.round(file.size / 1e6)} MB`,
  message: `The file is larger than the ${Math.round(FILE_LIMITS.file_bytes / 1e6)} MB that are read.`,
  mend: "Cut the terrain to the site.",
});

const unreadable = (name: string, error: unknown): Problem => ({
  code: "file-unreadable",
  severity: "error",
  file: name,
  place: "file",
  value: "",
  message: `The file could not be read: ${error instanceof Error ? error.message : String(error)}`,
  mend: "Choose it once more; if that does not help, export it again as a GeoTIFF.",
});
