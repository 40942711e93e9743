import "./cautions.css";

/** The cautions that always show. */
export function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <section className="cautions" aria-labelledby="cautions-head">
      <h2 id="cautions-head">Cautions</h2>
      <ul>
        {cautions.map((c) => (
          <li key={c}>{c}</li>
        ))}
      </ul>
    </section>
  );
}
