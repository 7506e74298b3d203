/**
 * The day on which a photo was taken, as its Exif data have it: ISO 8601, or nothing if they have none or none that is a
 * day. Exif 2.32 (CIPA DC-008), 4.6.5: "YYYY:MM:DD HH:MM:SS", blanks if unknown (from memory).
 */
export async function dayTaken(file: ArrayBuffer): Promise<string | undefined> {
  try {
    const { default: ExifReader } = await import('exifreader');
    const tags = ExifReader.load(file);
    return isoDay(tags.DateTimeOriginal?.description) ?? isoDay(tags.DateTime?.description);
  } catch {
    // Without Exif data, or with broken ones, the day is asked for.
    return undefined;
  }
}

function isoDay(text: string | undefined): string | undefined {
  const [, year, month, day] = /^(\d{4})[:-](\d{2})[:-](\d{2})/.exec(text ?? '') ?? [];
  if (year === undefined || Number(year) < 1900) return undefined;
  const date = new Date(`${year}-${month}-${day}T00:00:00Z`);
  const isDay = !Number.isNaN(date.getTime()) && date.getUTCDate() === Number(day);
  return isDay ? `${year}-${month}-${day}` : undefined;
}
