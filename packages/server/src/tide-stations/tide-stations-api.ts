import { Hono } from "hono";
import { problemAnswer, requestProblem } from "../app/answers.ts";
import { stationsNear } from "./stations-near.ts";

const MOST = 8;

/** GET /?lon=&lat=: tide stations around a place, with the levels that they publish on a land datum. */
export function tideStationsApi(near = stationsNear): Hono {
  const api = new Hono();
  api.get("/", async (c) => {
    const place = (["lon", "lat"] as const).map((key) => {
      const text = c.req.query(key) ?? "";
      const value = text.trim() === "" ? Number.NaN : Number(text);
      const most = key === "lon" ? 180 : 90;
      return { key, text, value, most, isSound: Number.isFinite(value) && Math.abs(value) <= most };
    });
    const faults = place.filter((p) => !p.isSound);
    if (faults.length > 0)
      return problemAnswer(
        c,
        422,
        faults.map((p) =>
          requestProblem(
            "place",
            p.key,
            p.text,
            "This is no place on the earth.",
            `Give degrees up to ${p.most}.`,
          ),
        ),
      );
    return c.json({ stations: await near(place[0]!.value, place[1]!.value, MOST) });
  });
  return api;
}
