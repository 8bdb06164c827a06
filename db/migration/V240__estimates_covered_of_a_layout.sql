-- What agreed lines and offcuts give of the need that a layout came to. The purchase and its safe figure are what is needed beyond it;
-- how far they stray is drawn of the whole need. Lines from before count as if nothing were covered, until the buy list is put again.
alter table estimate_material
    add covered_quantity numeric(14, 4) not null default 0,
    add constraint estimate_material_covered_of_a_layout
        check (covered_quantity = 0 or covered_quantity > 0 and safe_quantity is not null);
