import { createTheme, type CSSVariablesResolver } from "@mantine/core";

/** The ink of the sheet in ten steps; step 8 is the ink itself. */
const ink = [
  "#f4f6f5",
  "#e6eae9",
  "#d3dad9",
  "#adb7b8",
  "#8b9799",
  "#6f7d80",
  "#5b676a",
  "#3e4a4d",
  "#1c282b",
  "#33454a",
] as const;

const typeface = '"Source Sans 3", "Noto Sans", "DejaVu Sans", sans-serif';

export const theme = createTheme({
  colors: { ink },
  primaryColor: "ink",
  primaryShade: { light: 8, dark: 1 },
  autoContrast: true,
  black: "#1c282b",
  white: "#fffefb",
  fontFamily: typeface,
  headings: { fontFamily: typeface, fontWeight: "600" },
  defaultRadius: "xs",
  cursorType: "pointer",
  respectReducedMotion: true,
  // Said aloud, so that a style sheet can see which button is filled.
  components: { Button: { defaultProps: { variant: "filled" } } },
});

/** Maps the component kit's surface colours onto the tokens of the sheet, which know day and night themselves. */
export const sheetVariables: CSSVariablesResolver = () => {
  const sheet = {
    "--mantine-color-body": "var(--sheet)",
    "--mantine-color-text": "var(--ink)",
    "--mantine-color-default": "var(--sheet)",
    "--mantine-color-default-hover": "var(--paper-2)",
    "--mantine-color-default-color": "var(--ink)",
    "--mantine-color-default-border": "var(--ink-2)",
    "--mantine-color-dimmed": "var(--ink-2)",
    "--mantine-color-placeholder": "var(--ink-2)",
    "--mantine-color-error": "var(--clay)",
    "--mantine-color-disabled": "var(--paper-2)",
    "--mantine-color-disabled-color": "var(--ink-2)",
    "--mantine-color-disabled-border": "var(--rule)",
  };
  return { variables: {}, light: sheet, dark: sheet };
};
