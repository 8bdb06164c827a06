package org.tallywright.shared.web;

import java.util.Locale;
import java.util.function.Function;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Configuration;
import org.springframework.format.Formatter;
import org.springframework.format.FormatterRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.tallywright.shared.GrossQuantity;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Length;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Markup;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.ShopAccount;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/** Every shared value reads itself from a form and writes itself on a page ({@code ${{...}}} in a template). */
@Configuration(proxyBeanMethods = false)
class ShopFormatters implements WebMvcConfigurer {
    private final ObjectProvider<ShopConventions> conventions;

    ShopFormatters(ObjectProvider<ShopConventions> conventions) {
        this.conventions = conventions;
    }

    @Override
    public void addFormatters(FormatterRegistry registry) {
        add(registry, Money.class, Money::of, m -> shop().money().format(m));
        add(registry, UnitPrice.class, UnitPrice::of, p -> shop().money().format(p));
        add(registry, Hours.class, Hours::parse, Hours::toString);
        add(registry, Length.class, t -> Length.parse(t, shop().units()), l -> l.format(shop().units()));
        add(registry, Quantity.class, Quantity::of, Quantity::toString);
        add(registry, NetQuantity.class, NetQuantity::of, NetQuantity::toString);
        add(registry, GrossQuantity.class, GrossQuantity::of, GrossQuantity::toString);
        add(registry, UnitHours.class, UnitHours::of, UnitHours::toString);
        add(registry, Percent.class, Percent::of, Percent::toString);
        add(registry, Margin.class, Margin::of, Margin::toString);
        add(registry, Markup.class, Markup::of, Markup::toString);
        add(registry, Yield.class, Yield::of, Yield::toString);
        add(registry, Unit.class, Unit::of, Unit::code);
        add(registry, HourClass.class, HourClass::of, HourClass::code);
        add(registry, ShopAccount.class, ShopAccount::of, ShopAccount::code);
    }

    private ShopConventions shop() {
        return conventions.getIfAvailable(() -> ShopConventions.DEFAULT);
    }

    private static <T> void add(
            FormatterRegistry registry, Class<T> type, Function<String, T> read, Function<T, String> write) {
        registry.addFormatterForFieldType(type, new Formatter<T>() {
            @Override
            public T parse(String text, Locale locale) {
                return read.apply(text);
            }

            @Override
            public String print(T value, Locale locale) {
                return write.apply(value);
            }
        });
    }
}
