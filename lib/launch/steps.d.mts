export const dataFolder: string;
export function secrets(): { app: string; database: string };
