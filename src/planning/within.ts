/** Waits for work, but no longer than `ms`; rejects where the work does by then. */
export function within(work: Promise<unknown>, ms: number): Promise<void> {
  let timer: NodeJS.Timeout | undefined
  const time = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, ms)
  })
  return Promise.race([work.then(() => {}), time]).finally(() => clearTimeout(timer))
}
