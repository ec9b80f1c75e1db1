/** Colours side by side, as a small piece of cloth. Where `words` are given they are told, not shown. */
export function Swatch({ colours, words }: { colours: readonly string[]; words?: string }) {
  const width = 24 / colours.length
  return (
    <>
      <svg class="swatch" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
        {colours.map((colour, i) => (
          <rect key={colour} x={i * width} width={width} height="24" fill={colour} />
        ))}
      </svg>
      {words && <span class="unseen"> ({words})</span>}
    </>
  )
}
