export interface Running {
  readonly url: string;
  readonly close: () => Promise<void>;
}
export async function startCausey(): Promise<Running> {
  const { serveDev } = (await import("/tmp/webdev/dev.ts" as string)) as {
    serveDev: () => Promise<{ url: string; close: () => void }>;
  };
  const { url, close } = await serveDev();
  return { url, close: async () => close() };
}
