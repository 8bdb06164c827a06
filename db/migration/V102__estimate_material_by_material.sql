-- Whether an earlier job's estimate had a material.
create index estimate_material_material_idx on estimate_material (material_id);
