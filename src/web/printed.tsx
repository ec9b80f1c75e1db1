import { toSvg } from '../papers/drawing.ts'
import type { Block, Card, PrintedItem } from '../papers/printed.ts'
import { quiltPicture } from '../papers/quilt-picture.ts'
import type { Link } from './chat/view.ts'
import type { PrintedPage } from './view-printed.ts'

/** A paper as a page, with the ways to have it printed. */
export function PrintedView({ page }: { page: PrintedPage }) {
  return (
    <main id="main" class="printed" tabIndex={-1}>
      <nav class="onward" aria-label={page.waysName}>
        {[page.back, ...page.ways].map(({ label, href }: Link) => (
          <a key={href} href={href}>
            {label}
          </a>
        ))}
      </nav>
      <article class="card">
        {page.heading && <h1>{page.heading}</h1>}
        {page.blocks.map((block, n) => (
          <BlockView key={n} block={block} />
        ))}
      </article>
    </main>
  )
}

function BlockView({ block }: { block: Block }) {
  switch (block.block) {
    case 'heading': {
      const Level = `h${block.level}` as 'h1' | 'h2' | 'h3'
      return <Level>{block.words}</Level>
    }
    case 'words':
      return block.as === 'strong' ? (
        <p>
          <strong>{block.words}</strong>
        </p>
      ) : (
        <p class={block.as === 'small' ? 'hint' : undefined}>{block.words}</p>
      )
    case 'caution':
      return <p class="printed-caution">{block.words}</p>
    case 'list':
      return <ItemsView as={block.as} items={block.items} />
    case 'rows':
      return (
        <dl class="printed-rows">
          {block.rows.map(({ name, words }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      )
    case 'table':
      return <TableView table={block} />
    case 'drawing':
      return <Picture svg={toSvg(block.drawing, { title: block.told })} />
    case 'quilt':
      return (
        <Picture
          svg={quiltPicture(block.quilt, { name: 'printed', numbers: true }, { title: block.told })}
        />
      )
    case 'cards':
      return (
        <ul class="printed-cards">
          {block.cards.map((card, n) => (
            <CardView key={n} card={card} />
          ))}
        </ul>
      )
    case 'fields':
    case 'page':
      // To be written on, and where a sheet ends: a screen has neither.
      return null
  }
}

// Both writers make it from our own shapes and escape every text.
const Picture = ({ svg }: { svg: string }) => (
  <div class="printed-picture" dangerouslySetInnerHTML={{ __html: svg }} />
)

function ItemsView({ as, items }: Extract<Block, { block: 'list' }> | ItemsOf) {
  const List = as === 'step' || as === 'number' ? 'ol' : 'ul'
  return (
    <List class="printed-list">
      {items.map(({ words, notes = [], cautions = [] }, n) => (
        <li key={n}>
          {words}
          {notes.map((note) => (
            <span key={note} class="hint">
              {note}
            </span>
          ))}
          {cautions.map((one) => (
            <span key={one} class="printed-caution">
              {one}
            </span>
          ))}
        </li>
      ))}
    </List>
  )
}

interface ItemsOf {
  readonly as: Extract<Block, { block: 'list' }>['as']
  readonly items: readonly PrintedItem[]
}

function TableView({ table }: { table: Extract<Block, { block: 'table' }> }) {
  const titled = table.head.some((word) => word !== '')
  return (
    <div class="printed-table">
      <table>
        {titled && (
          <thead>
            <tr>
              {table.head.map((word) => (
                <th key={word} scope="col">
                  {word}
                </th>
              ))}
            </tr>
          </thead>
        )}
        <tbody>
          {table.rows.map((row, n) => (
            <tr key={n}>
              {row.map((words, i) => (
                <td key={i}>{words}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function CardView({ card }: { card: Card }) {
  const { big, lines, code, drawing } = card
  return (
    <li>
      <strong>{big}</strong>
      {lines.map((line, n) => (
        <span key={n}>{line}</span>
      ))}
      {code && <a href={code}>{code}</a>}
      {drawing && <Picture svg={toSvg(drawing, { title: null })} />}
    </li>
  )
}
