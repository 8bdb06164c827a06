-- What wood a material of the catalogue is, as the shop says; empty where it says that it is none whose movement is known.
-- A material without a row here is what the starting catalogue says of its code.
create table material_wood (
    -- The material.
    id      uuid primary key constraint material_wood_material_fk references material (id),
    species text not null constraint material_wood_species_given check (species ~ '^([a-z_]{2,60})?$'),
    version int not null
);
create trigger material_wood_audit after insert or update or delete on material_wood for each row execute function write_audit_entry();
