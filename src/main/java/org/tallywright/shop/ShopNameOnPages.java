package org.tallywright.shop;

import org.springframework.stereotype.Component;
import org.tallywright.web.ShopFace;

@Component
class ShopNameOnPages implements ShopFace {
    private final ShopSettings settings;

    ShopNameOnPages(ShopSettings settings) {
        this.settings = settings;
    }

    @Override
    public String shopName() {
        return settings.find().map(Shop::name).orElse("");
    }
}
