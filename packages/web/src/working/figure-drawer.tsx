import type { Figure } from "@causey/engine/plan";
import { SidePanel } from "../frame/panel.tsx";
import { showFigure, type Reading } from "../show/show.ts";
import { SourceLine, Steps } from "./steps.tsx";

interface Props {
  readonly figure: Figure;
  readonly reading: Reading;
  readonly onClose: () => void;
}

/** The working of one figure, at the side of the page. */
export default function FigureDrawer({ figure, reading, onClose }: Props) {
  return (
    <SidePanel title={figure.title} closeWords="Close the working" onClose={onClose}>
      <p className="working-value">{showFigure(figure, reading)}</p>
      {figure.incomplete !== undefined && (
        <p className="figure-gap">
          <span>{figure.incomplete}</span>
        </p>
      )}
      {figure.note && <p className="quiet">{figure.note}</p>}
      <h3 className="working-head">How it was found</h3>
      <Steps steps={figure.working} reading={reading} />
      {figure.sources.length > 0 && (
        <>
          <h3 className="working-head">Sources</h3>
          <ul className="sources">
            {figure.sources.map((s) => (
              <li key={`${s.id} ${s.at ?? ""}`}>
                <SourceLine source={s} />
              </li>
            ))}
          </ul>
        </>
      )}
    </SidePanel>
  );
}
