const longestSide = 2048
const bigBytes = 1_500_000

/** A big photo made smaller before it travels. Whatever goes wrong leaves it whole: the server takes that too. */
export const shrink = (file: File): Promise<File> => drawn(file).catch(() => file)

async function drawn(file: File): Promise<File> {
  if (file.size < bigBytes) return file
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  const scale = Math.min(1, longestSide / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.round(picture.width * scale)
  canvas.height = Math.round(picture.height * scale)
  canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height)
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.88))
  if (!blob || blob.size >= file.size) return file
  return new File([blob], file.name.replace(/\.\w+$/, '.jpg'), { type: 'image/jpeg' })
}
