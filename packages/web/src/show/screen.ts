/** Below this width the page is one column for one hand. */
export const narrow = "(max-width: 820px)";
