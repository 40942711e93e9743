import type { Source, TraceStep } from "@causey/engine/formula";
import { printFormula, show, statusWords, type Reading } from "../show/show.ts";
import "./working.css";

interface Props {
  readonly steps: readonly TraceStep[];
  readonly reading: Reading;
}

/** The working of a value: each step with its formula, its inputs with units, its value and its source. */
export function Steps({ steps, reading }: Props) {
  if (steps.length === 0)
    return <p className="quiet">Read off the layout as it stands: no formula in between.</p>;
  return (
    <ol className="steps">
      {steps.map((step, i) => (
        // A formula may stand in one working more than once; its place is its identity.
        // oxlint-disable-next-line react/no-array-index-key
        <li key={`${step.id} ${i}`} className="step">
          <p className="step-title">{step.title}</p>
          <p className="step-formula">
            {step.symbol} = {printFormula(step.text)}
          </p>
          <dl className="step-inputs">
            {step.inputs.map((input) => (
              <div key={input.symbol}>
                <dt>{input.symbol}</dt>
                <dd>{show(input.value, input.unit, reading)}</dd>
              </div>
            ))}
          </dl>
          <p className="step-value">
            {step.symbol} = <b>{show(step.value, step.unit, reading)}</b>
          </p>
          {step.note && <p className="quiet">{step.note}</p>}
          <SourceLine source={step.source} />
        </li>
      ))}
    </ol>
  );
}

/** A source with its place, and a mark where nobody has looked it up. */
export function SourceLine({ source }: { readonly source: Source }) {
  const words = statusWords[source.status];
  return (
    <p className={`source source-${source.status}`}>
      {source.title}
      {source.at && `, ${source.at}`}
      {words && (
        <>
          {" "}
          <span className="source-mark">{words}</span>
        </>
      )}
    </p>
  );
}
