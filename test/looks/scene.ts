import { type Chance, chanceOf } from '../help/chance.ts'
import type { Art } from './art.ts'
import { drawBottom } from './bottoms.ts'
import { framed, mapped, type Point, scaleAt, type View } from './camera.ts'
import { type Cloth, drawCloth, drawColour } from './cloth.ts'
import { lay } from './folds.ts'
import { coverOf, sew } from './garment.ts'
import { drawGround, edged, type Ground, groundColour } from './ground.ts'
import { moved } from './light.ts'
import { isBottom, type Look } from './look.ts'
import { bend, boxAround, corner, type Outline, pathOf } from './outline.ts'
import { placeSheet } from './place.ts'
import { drawPrint, type Print } from './print.ts'
import { cornersOf, drawSheet } from './reference.ts'
import type { Lamp, Piece, Scene } from './shoot.ts'
import { drawTop } from './tops.ts'

const degree = Math.PI / 180

/** How many pixels a millimetre of the coarse canvas has on which things are laid out. */
const coarse = 0.2

/** The scene that a look asks for: the same for the same seeds. `wider` is added to its margin. */
export async function setScene(
  look: Look,
  seeds: readonly number[],
  art: Art,
  wider: number,
): Promise<Scene> {
  const chance = chanceOf(...seeds, 1)
  const outline = outlineOf(look, chance)
  const colour = outline ? drawColour(chance, look.weave) : '#808080'
  const middle: Point = outline
    ? [(outline.box.left + outline.box.right) / 2, (outline.box.top + outline.box.bottom) / 2]
    : [0, 0]
  const turn = look.turn * degree
  const onPlane = ([u, v]: Point): Point => {
    const x = u - middle[0]
    const y = v - middle[1]
    return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)]
  }
  const laid = outline ? await coverPoints(outline, onPlane) : emptyPoints(chance)
  const lies = look.sheet?.lies
  const sheet = look.sheet
    ? placeSheet(chance, look.sheet, laid, (at, angle) =>
        drawSheet(chanceOf(...seeds, 2), look.sheet!.kind, at, angle),
      )
    : null
  const corners = sheet && look.fault !== 'cut-off' ? cornersOf(sheet) : []
  const framedBy =
    lies === 'cut'
      ? corners.sort((a, b) => Math.hypot(...a) - Math.hypot(...b)).slice(0, 2)
      : corners
  const view = viewOf(chance, look, laid, framedBy, wider)
  const scale = Math.min(5, Math.max(0.3, 1.1 * scaleAt(view, [0, 0])))
  const piece = outline
    ? await pieceOf(look, chanceOf(...seeds, 3), outline, colour, middle, turn, scale, art)
    : null
  return {
    view,
    ground: groundOf(look, chanceOf(...seeds, 4), outline ? colour : null, scale, laid),
    piece,
    sheet,
    lamp: lampOf(chanceOf(...seeds, 5), look),
  }
}

/** The ground, near the garment's colour where the look says so; here and there it ends and another begins. */
function groundOf(
  look: Look,
  chance: Chance,
  colour: string | null,
  scale: number,
  laid: readonly Point[],
): Ground {
  const near = look.near && colour !== null && look.ground !== 'wood' && look.ground !== 'tiles'
  const tone = near
    ? moved(colour, {
        l: chance.one([-1, 1]) * chance.real(4, 11),
        c: chance.real(-6, 4),
        h: chance.real(-20, 20),
      })
    : groundColour(chance, look.ground)
  const ground = drawGround(chance, look.ground, tone, scale)
  if (!look.edge) return ground
  const other = drawGround(chance, look.edge, groundColour(chance, look.edge), scale)
  const way = chance.real(0, 2 * Math.PI)
  const [cos, sin] = [Math.cos(way), Math.sin(way)]
  const reach = Math.max(...laid.map(([x, y]) => x * cos + y * sin))
  return edged(ground, other, cos, sin, reach + chance.real(5, 130))
}

function outlineOf(look: Look, chance: Chance): Outline | null {
  if (look.fault !== 'no-garment')
    return isBottom(look.kind)
      ? drawBottom(chance, look.kind, look.side)
      : drawTop(chance, look.kind, look.side)
  if (look.instead === 'empty') return null
  const cushion = look.instead === 'cushion'
  const w = (cushion ? chance.real(380, 500) : 210 * chance.one([1, Math.SQRT2])) / 2
  const h = cushion ? w : w * Math.SQRT2
  const puff = cushion ? 0.88 : 1
  const path = pathOf([
    corner(-w, -h),
    bend(0, -h * puff),
    corner(w, -h),
    bend(w * puff, 0),
    corner(w, h),
    bend(0, h * puff),
    corner(-w, h),
    bend(-w * puff, 0),
  ])
  return {
    parts: [{ path, from: [0, 0], turn: 0 }],
    marks: cushion ? [{ path, ink: 'lap', wide: 4 }] : [],
    front: { middle: [0, 0], width: w * 1.7, height: h * 1.7 },
    chest: [0, 0],
    box: boxAround([
      [-w, -h],
      [w, h],
    ]),
  }
}

/** Points of the plane that the garment covers, on a grid. */
async function coverPoints(outline: Outline, onPlane: (at: Point) => Point): Promise<Point[]> {
  const { cover, scale, left, top } = await coverOf(outline, coarse)
  const points: Point[] = []
  for (let y = 0; y < cover.height; y++)
    for (let x = 0; x < cover.width; x++)
      if (cover.data[y * cover.width + x]! > 100)
        points.push(onPlane([left + (x + 0.5) / scale, top + (y + 0.5) / scale]))
  return points
}

/** Where nothing lies, a stretch of ground as large as a garment is in view. */
function emptyPoints(chance: Chance): Point[] {
  const wide = chance.real(300, 600)
  const tall = chance.real(300, 600)
  return [
    [-wide, -tall],
    [wide, -tall],
    [wide, tall],
    [-wide, tall],
  ]
}

function viewOf(
  chance: Chance,
  look: Look,
  laid: readonly Point[],
  sheet: readonly Point[],
  wider: number,
): View {
  const box = boxAround([...laid, ...sheet])
  const across = box.right - box.left > (box.bottom - box.top) * 1.08
  const upright = across ? chance.happens(0.2) : chance.happens(0.86)
  const long = Math.round(look.long / 8) * 8
  const short = Math.round(look.long / look.shape / 8) * 8
  const [width, height] = upright ? [short, long] : [long, short]
  const off: Point = [chance.real(-0.8, 0.8), chance.real(-0.8, 0.8)]
  const view = framed(look, [...laid, ...sheet], width, height, look.margin + wider, off)
  return look.fault === 'cut-off' ? shifted(chance, view, laid) : view
}

/** The view moved until a part of what lies there is out of the picture. */
function shifted(chance: Chance, view: View, laid: readonly Point[]): View {
  const wanted = chance.real(0.1, 0.42)
  const way = chance.one([0, 1, 2, 3]) * 90 + chance.real(-20, 20)
  const seen = laid.map((point) => mapped(view.forth, point))
  const long = Math.max(view.width, view.height)
  const cut = (by: number) => {
    const dx = by * Math.cos(way * degree)
    const dy = by * Math.sin(way * degree)
    const out = seen.filter(
      ([x, y]) => x + dx < 0 || y + dy < 0 || x + dx > view.width || y + dy > view.height,
    )
    return out.length / seen.length
  }
  let by = 0
  while (cut(by) < wanted) by += long / 200
  return translated(view, by * Math.cos(way * degree), by * Math.sin(way * degree))
}

/** As a picture whose edges were cut elsewhere. */
function translated(view: View, dx: number, dy: number): View {
  const row = (n: number, by: number) =>
    [0, 1, 2].map((c) => view.forth[n * 3 + c]! + by * view.forth[6 + c]!)
  const forth = [...row(0, dx), ...row(1, dy), ...view.forth.slice(6)]
  const b = view.back
  const back = [0, 3, 6].flatMap((n) => [b[n]!, b[n + 1]!, b[n + 2]! - dx * b[n]! - dy * b[n + 1]!])
  return { ...view, forth, back }
}

async function pieceOf(
  look: Look,
  chance: Chance,
  outline: Outline,
  colour: string,
  middle: Point,
  turn: number,
  scale: number,
  art: Art,
): Promise<Piece> {
  const poster = look.fault === 'no-garment' && look.instead === 'poster'
  const cloth: Cloth = poster
    ? {
        ...drawCloth(chance, 'plain', moved('#f4f3ef', { l: chance.real(-4, 2) })),
        strength: 0.01,
        fade: 0,
      }
    : drawCloth(chance, look.weave, colour)
  const sewn = await sew(chance, outline, cloth, scale)
  const print: Print = await drawPrint(
    chance,
    {
      class: poster ? 'single' : look.print,
      chest: look.chest && !poster,
      stripes: look.stripes,
      faint: look.faint,
    },
    cloth,
    outline,
    scale,
    art,
  )
  const calm = poster ? 0 : chance.happens(0.22) ? chance.real(0.2, 0.5) : chance.real(0.5, 1.4)
  const small = look.kind === 'onesie' ? 0.6 : 1
  const folds = lay(chance, sewn, outline.parts, {
    soft: calm * small * chance.real(3, 10),
    crumple: calm * small * chance.real(0.5, 4.5),
    creases: Math.round(calm * chance.real(2, 18)),
    pulls: calm * small,
    lines: chance.happens(0.25) && calm > 0 ? chance.whole(1, 3) : 0,
    from: look.litFrom * degree - turn,
    steep: chance.real(0.55, 1.15),
    around: chance.real(0.32, 0.66),
    shadow: poster ? 0.2 : chance.real(0.18, 0.62),
    reach: poster ? 6 : chance.real(9, 34),
    wobble: poster ? 0.5 : chance.real(2, 5 + 4 * calm),
  })
  return { outline, cloth, print, sewn, folds, middle, turn }
}

function lampOf(chance: Chance, look: Look): Lamp {
  const from = look.litFrom * degree
  const far = {
    window: chance.real(900, 1900),
    lamp: chance.real(100, 700),
    even: chance.real(0, 900),
  }[look.light]
  const high = {
    window: chance.real(1300, 2400),
    lamp: chance.real(600, 1200),
    even: chance.real(2500, 4000),
  }[look.light]
  const around = {
    window: chance.real(0.15, 0.45),
    lamp: chance.real(0.35, 0.65),
    even: chance.real(0.6, 0.95),
  }[look.light]
  const gains = (cast: number) => [1 + cast, 1 + 0.1 * Math.abs(cast), 1 - 1.25 * cast]
  const mixedLight = chance.happens(0.2) ? chance.real(-0.08, 0.08) : 0
  const away = chance.real(350, 800)
  const at = chance.real(0, 2 * Math.PI)
  return {
    at: [far * Math.cos(from), far * Math.sin(from)],
    high,
    around,
    near: gains(look.cast),
    far: gains(look.cast + mixedLight),
    shade: chance.happens(0.16)
      ? {
          at: [away * Math.cos(at), away * Math.sin(at)],
          radius: chance.real(250, 480),
          deep: chance.real(0.12, 0.35),
        }
      : null,
  }
}
