/** What must be known before a plan can be made. */
export function Missing({ sentences }: { readonly sentences: readonly string[] }) {
  return (
    <section className="plan-missing" aria-labelledby="plan-missing-title">
      <h2 id="plan-missing-title">A plan needs a measured bone</h2>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
