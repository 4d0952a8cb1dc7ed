/** Gives the person a file to keep, through the browser's downloads. */
export function handOver(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has taken hold of it by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
