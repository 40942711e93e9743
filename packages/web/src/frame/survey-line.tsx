import { useEffect, useRef } from "react";
import { useScrollEnds } from "../show/use-scroll-ends.ts";
import { useDesk } from "../desk/desk.ts";
import { pages, routeHash } from "../desk/route.ts";
import { useStore } from "../desk/store.ts";
import "./survey-line.css";

const groups = [...new Set(pages.map((p) => p.group))];

/** The pages as pegs along a survey line, with a flag at the one that is open. */
export function SurveyLine() {
  const { router } = useDesk();
  const route = useStore(router, (r) => r);
  const line = useRef<HTMLElement>(null);
  useEffect(() => {
    const peg = line.current?.querySelector('[aria-current="page"]');
    peg?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [route.page]);
  const { goesOnLeft, goesOnRight } = useScrollEnds(line);
  return (
    <nav
      ref={line}
      className={`survey-line${goesOnLeft ? " goes-on-left" : ""}${goesOnRight ? " goes-on-right" : ""}`}
      aria-label="Pages"
    >
      {groups.map((group) => (
        <div key={group} className="survey-group">
          <p className="survey-word" id={`group-${group}`}>
            {group}
          </p>
          <ul aria-labelledby={`group-${group}`}>
            {pages
              .filter((p) => p.group === group)
              .map((page) => (
                <li key={page.id}>
                  <a
                    href={routeHash({ ...route, page: page.id })}
                    className="peg"
                    aria-current={page.id === route.page ? "page" : undefined}
                  >
                    <svg className="peg-sign" width="44" height="40" viewBox="-12 0 44 40" aria-hidden="true">
                      <path className="peg-flag" d="M0 2l24 6L0 14z" />
                      <path className="peg-pole" d="M0 2V38" />
                      <circle className="peg-head" cy="32" r="3.500" />
                    </svg>
                    <span>{page.title}</span>
                  </a>
                </li>
              ))}
          </ul>
        </div>
      ))}
    </nav>
  );
}
