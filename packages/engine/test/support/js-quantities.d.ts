/** The little of the unit library that the tests ask: it carries no types of its own. */
declare module "js-quantities" {
  interface Quantity {
    readonly scalar: number;
    readonly to: (unit: string) => Quantity;
  }
  const quantity: (text: string) => Quantity;
  export default quantity;
}
