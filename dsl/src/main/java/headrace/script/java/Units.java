package headrace.script.java;

import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Quantities;
import headrace.units.Quantity;

/** What the methods named after units call: {@code m3ph(52)}, where a Groovy script writes {@code 52.m3ph}. */
public final class Units {
    private Units() {}

    /** Returns so many of a unit, given by its word. */
    public static Quantity<?> of(double value, String word) {
        return Quantities.of(value, word)
                .orElseThrow(() -> new IllegalArgumentException("The words of units make methods of units: " + word));
    }

    /** Returns an amount of money. */
    public static Money money(double amount, String currency) {
        return new Money(amount, currency);
    }

    /** Returns the price of a kWh in a currency that is not said. */
    public static EnergyPrice perKWh(double amount) {
        return new EnergyPrice(new Money(amount, ""));
    }

    /** Returns an amount of money as the price of a kWh. */
    public static EnergyPrice perKWh(Money amount) {
        return new EnergyPrice(amount);
    }
}
