import {
  convertCssVariables,
  defaultCssVariablesResolver,
  DEFAULT_THEME,
  mergeMantineTheme,
  type ConvertCSSVariablesInput,
} from "@mantine/core";
import { sheetVariables, theme } from "./theme.ts";

const colourFamilies = Object.keys(DEFAULT_THEME.colors).filter((c) => !["gray", "dark", "red"].includes(c));
const isUnused = (name: string): boolean =>
  colourFamilies.some((c) => name.startsWith(`--mantine-color-${c}-`));

type Variables = ConvertCSSVariablesInput["variables"];

const used = (variables: Variables): Variables =>
  Object.fromEntries(Object.entries(variables).filter(([name]) => !isUnused(name)));

/** Every variable that the component kit reads, as text of a style sheet. Runs while the page is built. */
export function themeVariables(): string {
  const whole = mergeMantineTheme(DEFAULT_THEME, theme);
  const base = defaultCssVariablesResolver(whole);
  const sheet = sheetVariables(whole);
  return convertCssVariables(
    {
      variables: used({ ...base.variables, ...sheet.variables }),
      light: used({ ...base.light, ...sheet.light }),
      dark: used({ ...base.dark, ...sheet.dark }),
    },
    ":root",
  );
}
