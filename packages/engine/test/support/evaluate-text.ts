const TOKEN = /\s*(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+|[A-Za-zα-ωΑ-Ω_][\wα-ωΑ-Ω']*|[-+*/^(),])/y;

const functions: Readonly<Record<string, (...args: number[]) => number>> = {
  min: Math.min,
  max: Math.max,
  sqrt: Math.sqrt,
  abs: Math.abs,
  exp: Math.exp,
  ln: Math.log,
  log10: Math.log10,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  sinh: Math.sinh,
  cosh: Math.cosh,
  tanh: Math.tanh,
  floor: Math.floor,
  ceil: Math.ceil,
  round: Math.round,
};

function tokens(text: string): string[] {
  const found: string[] = [];
  const end = text.trimEnd().length;
  TOKEN.lastIndex = 0;
  for (let at = 0; at < end; at = TOKEN.lastIndex) {
    const match = TOKEN.exec(text);
    if (!match) throw new SyntaxError(`cannot read "${text.slice(at)}" in "${text}"`);
    found.push(match[1]!);
  }
  return found;
}

/**
 * Evaluates the printed text of a formula: + - * / ^ (binds tightest, to the right), unary minus, parentheses,
 * numbers, the functions above, pi, and named values. Throws `SyntaxError` on anything else.
 */
export function evaluateText(text: string, values: Readonly<Record<string, number>>): number {
  const list = tokens(text);
  let at = 0;
  const peek = (): string | undefined => list[at];
  const take = (): string => {
    const token = list[at++];
    if (token === undefined) throw new SyntaxError(`"${text}" ends too early`);
    return token;
  };
  const expect = (token: string): void => {
    const found = take();
    if (found !== token) throw new SyntaxError(`"${text}": "${token}" expected, "${found}" found`);
  };

  const sum = (): number => {
    let value = product();
    while (peek() === "+" || peek() === "-") value = take() === "+" ? value + product() : value - product();
    return value;
  };
  const product = (): number => {
    let value = signed();
    while (peek() === "*" || peek() === "/") value = take() === "*" ? value * signed() : value / signed();
    return value;
  };
  const signed = (): number => {
    if (peek() !== "-") return power();
    take();
    return -signed();
  };
  const power = (): number => {
    const base = atom();
    if (peek() !== "^") return base;
    take();
    return base ** signed();
  };
  const call = (name: string): number => {
    const f = functions[name];
    if (!f) throw new SyntaxError(`"${text}": no function "${name}"`);
    expect("(");
    const args = [sum()];
    while (peek() === ",") {
      take();
      args.push(sum());
    }
    expect(")");
    return f(...args);
  };
  const atom = (): number => {
    const token = take();
    if (token === "(") {
      const value = sum();
      expect(")");
      return value;
    }
    if (/^[\d.]/.test(token)) return Number(token);
    if (peek() === "(") return call(token);
    if (Object.hasOwn(values, token)) return values[token]!;
    if (token === "pi") return Math.PI;
    throw new SyntaxError(`"${text}": "${token}" is not a symbol of this formula`);
  };

  const value = sum();
  if (at < list.length) throw new SyntaxError(`"${text}": "${list[at]}" left over`);
  return value;
}
