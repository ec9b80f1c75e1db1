import { dirname, join, relative } from 'node:path'
import {
  computeLineStarts,
  type Identifier,
  type ImportDeclaration,
  type Node,
  type NumericLiteral,
  type SourceFile,
  type Statement,
  type StringLiteral,
  SyntaxKind,
} from 'typescript/unstable/ast'
import { API } from 'typescript/unstable/sync'

/** A number that stands in the code. `in` is what holds it at the top of its file. */
export interface Literal {
  readonly file: string
  readonly line: number
  readonly in: string
  readonly value: string
}

interface Declared {
  readonly name: string
  readonly node: Node
}

interface Room {
  readonly path: string
  readonly source: SourceFile
  readonly declared: readonly Declared[]
  /** Where a name that is imported stands. */
  readonly imported: ReadonlyMap<string, string>
}

const isFunction = (node: Node): boolean =>
  node.kind === SyntaxKind.ArrowFunction ||
  node.kind === SyntaxKind.FunctionExpression ||
  node.kind === SyntaxKind.FunctionDeclaration ||
  node.kind === SyntaxKind.ClassDeclaration

function each(node: Node, visit: (node: Node) => void): void {
  visit(node)
  node.forEachChild((child) => {
    each(child, visit)
    return undefined
  })
}

const nameOf = (node: Node): string => (node as unknown as { name?: Identifier }).name?.text ?? ''

function declaredBy(statement: Statement): Declared[] {
  if (statement.kind !== SyntaxKind.VariableStatement) {
    return [{ name: nameOf(statement), node: statement }]
  }
  const found: Declared[] = []
  statement.forEachChild((list) => {
    list.forEachChild((node) => {
      if (node.kind === SyntaxKind.VariableDeclaration) found.push({ name: nameOf(node), node })
      return undefined
    })
    return undefined
  })
  return found
}

function importsOf(path: string, source: SourceFile): Map<string, string> {
  const found = new Map<string, string>()
  for (const statement of source.statements) {
    if (statement.kind !== SyntaxKind.ImportDeclaration) continue
    const from = ((statement as ImportDeclaration).moduleSpecifier as StringLiteral).text
    if (!from.startsWith('.')) continue
    each(statement, (node) => {
      if (node.kind === SyntaxKind.ImportSpecifier) {
        found.set(nameOf(node), join(dirname(path), from))
      }
    })
  }
  return found
}

/** Literals that stand for no amount: types, and places in a list. */
function isPlace(node: Node): boolean {
  const { parent } = node
  return (
    parent.kind === SyntaxKind.LiteralType || parent.kind === SyntaxKind.ElementAccessExpression
  )
}

const inFunction = (node: Node, top: Node): boolean => {
  for (let at = node; at !== top; at = at.parent) if (isFunction(at)) return true
  return isFunction(top)
}

/** A type tells no amount, and what it is the type of is no figure for that. */
const isType = ({ kind }: Node): boolean =>
  kind === SyntaxKind.InterfaceDeclaration || kind === SyntaxKind.TypeAliasDeclaration

/** `b` of `a.b` and of `{ b: 1 }` names no declaration. */
function isKey(node: Node): boolean {
  const { parent } = node
  const keyed =
    parent.kind === SyntaxKind.PropertyAccessExpression ||
    parent.kind === SyntaxKind.PropertyAssignment
  return keyed && (parent as unknown as { name: Node }).name === node
}

/** Everything that the lists of figures reach: `path name`. */
function listed(rooms: ReadonlyMap<string, Room>): Set<string> {
  const reached = new Set<string>()
  const visit = (room: Room, { name, node }: Declared): void => {
    const key = `${room.path} ${name}`
    if (reached.has(key)) return
    reached.add(key)
    each(node, (inner) => {
      if (inner.kind !== SyntaxKind.Identifier) return
      if (isKey(inner)) return
      const { text } = inner as Identifier
      const other = rooms.get(room.imported.get(text) ?? '')
      const found = (other ?? room).declared.find((one) => one.name === text)
      // Another file's functions are not gone through: what they hold is for that file to list.
      const holder = other && found?.node.kind === SyntaxKind.FunctionDeclaration
      if (found && !holder && !isType(found.node)) visit(other ?? room, found)
    })
  }
  for (const room of rooms.values()) {
    for (const one of room.declared) if (/Figures$/.test(one.name)) visit(room, one)
  }
  return reached
}

/** The numbers in files of a project that no list of figures reaches, but for 0, 1, 2 and 100. */
export function unlistedIn(root: string, files: readonly string[]): Literal[] {
  const api = new API({ cwd: root })
  try {
    const [project] = api.updateSnapshot({ openProject: join(root, 'tsconfig.json') }).getProjects()
    const rooms = new Map(
      files.map((file): [string, Room] => {
        const path = join(root, file)
        const source = project!.program.getSourceFile(path)
        if (!source) throw new Error(`${file} is no part of the project`)
        const declared = source.statements.flatMap((one) => declaredBy(one))
        return [path, { path, source, declared, imported: importsOf(path, source) }]
      }),
    )
    const reached = listed(rooms)
    return [...rooms.values()].flatMap((room) =>
      room.declared.flatMap((one) => unlisted(root, room, one, reached)),
    )
  } finally {
    api.close()
  }
}

const plain = new Set(['0', '1', '2', '100'])

function unlisted(
  root: string,
  { path, source }: Room,
  { name, node }: Declared,
  reached: ReadonlySet<string>,
): Literal[] {
  const starts = computeLineStarts(source.text)
  const found: Literal[] = []
  each(node, (inner) => {
    if (inner.kind !== SyntaxKind.NumericLiteral || isPlace(inner)) return
    const value = (inner as NumericLiteral).text
    if (plain.has(value)) return
    if (reached.has(`${path} ${name}`) && !inFunction(inner, node)) return
    const line = starts.filter((start) => start < inner.end).length
    found.push({ file: relative(root, path), line, in: name, value })
  })
  return found
}
