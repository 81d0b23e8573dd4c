export async function readImport(_table: string, _file: File): Promise<void> {}
