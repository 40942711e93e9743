import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Photo, Plan } from "@causey/engine/plan";
import {
  isWorldName,
  photoHead,
  readPhoto,
  readWorldFile,
  WORLD_ENDINGS,
  type PhotoHead,
} from "@causey/io/photo";
import { useMemo, useState } from "react";
import { showRound } from "../show/show.ts";

export const WORLD_FILES = WORLD_ENDINGS.join(",");
export const PICTURE_ENDINGS = `.tif,.tiff,.jpg,.jpeg,.png,${WORLD_FILES}`;

interface Chosen {
  readonly file: File;
  readonly bytes: Uint8Array;
  readonly head: PhotoHead;
}

export interface PhotoFile {
  readonly file: File | null;
  readonly head: PhotoHead | null;
  readonly worldName: string | null;
  /** As it would stand in the plan. */
  readonly photo: Photo | null;
  /** Width and height on the ground, in words. */
  readonly size: string | null;
  readonly problems: readonly Problem[];
  /** A picture, its world file, or both. */
  readonly takeFiles: (files: readonly File[]) => Promise<void>;
  readonly confirm: (isConfirmed: boolean) => void;
  readonly setOpacity: (opacity: number) => void;
}

/** A picture that is being chosen, held against the plan with every answer that is given. */
export function usePhotoFile(plan: Plan): PhotoFile {
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [world, setWorld] = useState<{ readonly name: string; readonly terms: Photo["world"] } | null>(null);
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const [told, setTold] = useState<Pick<Photo, "crs_confirmed" | "opacity">>({});

  const takeFiles = async (files: readonly File[]): Promise<void> => {
    setRefused([]);
    try {
      for (const file of files.toSorted(
        (a, b) => Number(isWorldName(a.name)) - Number(isWorldName(b.name)),
      )) {
        const bytes = new Uint8Array(await file.arrayBuffer());
        if (isWorldName(file.name)) setWorld({ name: file.name, terms: readWorldFile(file.name, bytes) });
        else {
          setChosen(null);
          setWorld(null);
          setTold({});
          setChosen({ file, bytes, head: photoHead(file.name, bytes) });
        }
      }
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      setRefused(error.problems);
    }
  };
  const photo = useMemo<Photo | null>(
    () => chosen && { file: chosen.file.name, world: world?.terms ?? null, ...told },
    [chosen, world, told],
  );
  const read = useMemo(() => held(chosen, photo, plan), [chosen, photo, plan]);
  return {
    file: chosen?.file ?? null,
    head: chosen?.head ?? null,
    worldName: world?.name ?? null,
    photo,
    size: read.size,
    problems: [...refused, ...read.problems],
    takeFiles,
    confirm: (crs_confirmed) => setTold((last) => ({ ...last, crs_confirmed })),
    setOpacity: (opacity) => setTold((last) => ({ ...last, opacity })),
  };
}

function held(
  chosen: Chosen | null,
  photo: Photo | null,
  { crs, units }: Plan,
): { readonly size: string | null; readonly problems: readonly Problem[] } {
  if (chosen === null || photo === null) return { size: null, problems: [] };
  try {
    const { extent, warnings } = readPhoto(photo, chosen.bytes, crs);
    const [wide, tall] = [extent[2] - extent[0], extent[3] - extent[1]];
    return {
      size: `${showRound(wide, units)} wide, ${showRound(tall, units)} high on the ground`,
      problems: warnings,
    };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    return { size: null, problems: error.problems };
  }
}
