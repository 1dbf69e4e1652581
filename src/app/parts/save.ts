// Offers a text or a file to be saved; nothing leaves this machine.

export function saveFile(name: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export const saveText = (name: string, text: string, type: string): void =>
  saveFile(name, new Blob([text], { type }));
