import { Button } from "@mantine/core";
import type { Cart } from "@causey/engine/plan";
import type { UnitSystem } from "@causey/engine/units";
import { ChoiceField } from "../fields/choice-field.tsx";
import { LengthField } from "../fields/length-field.tsx";
import { MassField } from "../fields/mass-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { loadWords } from "./cart-words.ts";

interface Props {
  readonly cart: Cart;
  readonly units: UnitSystem;
  readonly onTake: (cart: Cart) => void;
  readonly onRemove: () => void;
}

const masses = [
  ["empty_kg", "Empty", "As weighed, with nothing on it."],
  ["load_kg", "Load, dry", "The heaviest that is brought."],
  ["wet_kg", "Mud and water on top", "Stuck to wheels and load after a wet day."],
] as const;
const sizes = [
  ["track_mm", "Wheels apart, across"],
  ["wheel_width_mm", "Width of a wheel"],
  ["wheel_contact_mm", "Wheel on the deck, along"],
] as const;
const overall = [
  ["width_mm", "Overall width"],
  ["length_mm", "Overall length, with handles"],
] as const;

/** The cart: empty, loaded and wet, its wheels and its overall size. */
export function CartFields({ cart, units, onTake, onRemove }: Props) {
  const change = (some: Partial<Cart>): void => onTake({ ...cart, ...some });
  return (
    <fieldset className="cart">
      <legend>Cart</legend>
      <div className="fields">
        <TextField required label="Name of the cart" value={cart.name} onTake={(name) => change({ name })} />
        {masses.map(([key, label, description]) => (
          <MassField
            key={key}
            label={label}
            units={units}
            value={cart[key]}
            description={description}
            onTake={(kg) => change({ [key]: kg })}
          />
        ))}
        <p className="fields-wide cart-total">{loadWords(cart, units)}</p>
        <ChoiceField<"1" | "2">
          label="Axles"
          value={cart.axles === 2 ? "2" : "1"}
          choices={[
            { value: "1", words: "one" },
            { value: "2", words: "two" },
          ]}
          onTake={(axles) =>
            change(
              axles === "2"
                ? { axles: 2, axle_distance_mm: cart.axle_distance_mm || 600 }
                : { axles: 1, axle_distance_mm: 0 },
            )
          }
        />
        {cart.axles === 2 && (
          <LengthField
            label="Axles apart"
            size="small"
            units={units}
            least_m={0.05}
            value={cart.axle_distance_mm / 1000}
            onTake={(metres) => change({ axle_distance_mm: metres * 1000 })}
          />
        )}
        {sizes.map(([key, label]) => (
          <LengthField
            key={key}
            label={label}
            size="small"
            units={units}
            least_m={0.005}
            value={cart[key] / 1000}
            onTake={(metres) => change({ [key]: metres * 1000 })}
          />
        ))}
        {overall.map(([key, label]) => {
          const mm = cart[key];
          return (
            <LengthField
              key={key}
              label={label}
              size="small"
              optional
              units={units}
              least_m={0.1}
              value={mm === null ? null : mm / 1000}
              onTake={(metres) => change({ [key]: metres === null ? null : metres * 1000 })}
            />
          );
        })}
      </div>
      <Button variant="default" size="compact-sm" onClick={onRemove}>
        No cart
      </Button>
    </fieldset>
  );
}
