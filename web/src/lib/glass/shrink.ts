/** Longest side of what is kept, px: a glass the size of a thumb on the screen, some 15 kB. */
const longestPx = 320
const quality = 0.72

/**
 * A photograph made small in the page, as base64 of a JPEG.
 * @throws when the browser can not read the file
 */
export async function shrink(file: Blob): Promise<string> {
  const address = URL.createObjectURL(file)
  try {
    const photo = new Image()
    await new Promise((ready, failed) => {
      photo.onload = ready
      photo.onerror = failed
      photo.src = address
    })
    const scale = Math.min(1, longestPx / Math.max(photo.naturalWidth, photo.naturalHeight))
    const canvas = document.createElement('canvas')
    canvas.width = Math.max(1, Math.round(photo.naturalWidth * scale))
    canvas.height = Math.max(1, Math.round(photo.naturalHeight * scale))
    canvas.getContext('2d')?.drawImage(photo, 0, 0, canvas.width, canvas.height)
    const text = canvas.toDataURL('image/jpeg', quality)
    return text.slice(text.indexOf(',') + 1)
  } finally {
    URL.revokeObjectURL(address)
  }
}
