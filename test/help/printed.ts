import type { Block, Printed } from '../../src/papers/printed.ts'

/** A paper around some blocks, with a line of two inches to measure. */
export const paperWith = (blocks: readonly Block[], more: Partial<Printed> = {}): Printed => ({
  title: 'A paper',
  language: 'en',
  at: Date.UTC(2026, 5, 1, 9),
  head: 'A paper · pile 7',
  pages: 'Page #n of #m',
  measure: { words: 'Two inches.', long: 50.8 },
  blocks,
  ...more,
})

/** What names and stories may hold that no typeface or page was made for. */
export const hostileTexts: Readonly<Record<string, string>> = {
  long: 'Großmutter'.repeat(40),
  'right to left': 'قميص جدي הסבתא שלי',
  emoji: '👩‍👧‍👦 🧵🪡 ❤️',
  'far eastern': '李奶奶的蓝色法兰绒衬衫 おばあちゃん 할머니',
  controls: 'a\u0000b\u0007c\u001b[31m\u202Ed\u200Be\r\nf\tg\uFFFEh',
  halves: 'half \uD83D of \uDE00 a pair',
  markup: '<script>alert("x")</script> & <b>bold</b> \\) Tj ET (',
  marks: 'Z͑ͫ̓a̴l̷g̶o̸ e\u0301\u0302\u0303\u0304'.repeat(5),
  story: 'She wore it on the day we met, in the rain, and it never quite dried. '.repeat(57),
}
