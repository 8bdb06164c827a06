-- Nothing is reckoned from the thickness of a bar, and a dealer's lengths may be written down before it is known.
alter table material_form drop constraint material_form_thickness_in_range;
alter table material_form add constraint material_form_thickness_in_range
    check (thickness between 0 and 3200000 and (thickness > 0 or form = 'bar'));
