import type { Problem } from "@causey/engine/formula";
import { lookAtTerrain, type TerrainLook } from "@causey/io/fresh";
import { useRef, useState } from "react";
import { bytesOf, problemsOf } from "../files/chosen-file.ts";

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
      read(
        async () => lookAtTerrain(file.name, await bytesOf(file, "Cut the terrain to the site.")),
        file.name,
      ),
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
    return { look: null, refused: problemsOf(name, error, "export it again as a GeoTIFF") };
  }
}
