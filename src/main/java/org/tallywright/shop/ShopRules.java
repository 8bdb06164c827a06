package org.tallywright.shop;

import java.time.Clock;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.Locale;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.tallywright.shared.MoneyFormat;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Units;

/** What the shared values take from the shop's settings: time zone, units, how money is written. */
@Configuration(proxyBeanMethods = false)
class ShopRules {
    @Bean
    ShopClock shopClock(Clock clock, ShopConventions conventions) {
        return new ShopClock(clock, conventions::zone);
    }

    @Bean
    ShopConventions shopConventions(ShopSettings settings) {
        return new ShopConventions() {
            @Override
            public ZoneId zone() {
                return settings.find().map(Shop::zone).orElse(ZoneOffset.UTC);
            }

            @Override
            public Units units() {
                return settings.find().map(Shop::units).orElse(Units.IMPERIAL);
            }

            @Override
            public MoneyFormat money() {
                return settings.find().map(shop -> moneyIn(shop.currency())).orElse(MoneyFormat.DEFAULT);
            }
        };
    }

    /** The sign of the currency in front, as in English text; currencies without one by their code. */
    static MoneyFormat moneyIn(Currency currency) {
        String sign = switch (currency.getCurrencyCode()) {
            case "USD", "CAD", "AUD", "NZD" -> "$";
            case "EUR" -> "\u20ac";
            case "GBP" -> "\u00a3";
            default -> currency.getCurrencyCode().toUpperCase(Locale.ROOT);
        };
        return new MoneyFormat(sign, true, '.', ',');
    }
}
