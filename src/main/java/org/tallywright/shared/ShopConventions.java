package org.tallywright.shared;

import java.time.ZoneId;
import java.time.ZoneOffset;

/** What values must know of the shop's settings. The shop's settings are the one bean of it; without one, defaults. */
public interface ShopConventions {
    ShopConventions DEFAULT = new ShopConventions() {
        @Override
        public ZoneId zone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Units units() {
            return Units.IMPERIAL;
        }

        @Override
        public MoneyFormat money() {
            return MoneyFormat.DEFAULT;
        }
    };

    ZoneId zone();

    Units units();

    MoneyFormat money();
}
