package org.tallywright.web;

/** What the frame of a page shows of the shop; implemented where the shop's settings are kept. */
public interface ShopFace {
    /** Empty before set-up. */
    String shopName();
}
