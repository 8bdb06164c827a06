-- From the sizes of a piece to its parts, by formulas of the shop.

-- The formulas of a kind of piece, line by line; a kind without a row here uses the shipped ones.
create table piece_kind_recipe (
    -- The kind of piece.
    id      uuid primary key constraint piece_kind_recipe_kind_fk references piece_kind (id),
    body    text not null constraint piece_kind_recipe_body_length check (length(body) <= 20000),
    version int not null
);
create trigger piece_kind_recipe_audit after insert or update or delete on piece_kind_recipe for each row execute function write_audit_entry();

-- How a material comes, so that parts can be laid out on it. Lengths are units of 3.125 micrometres.
create table material_form (
    -- The material.
    id              uuid primary key constraint material_form_material_fk references material (id),
    form            text not null constraint material_form_known check (form in ('sheet', 'bar', 'board')),
    -- Sheet and bar: as it is. Board: the rough thickness it is tallied by.
    thickness       bigint not null constraint material_form_thickness_in_range check (thickness between 1 and 3200000),
    -- Sheet: its length, along the grain, and width.
    sheet_length    bigint constraint material_form_sheet_length_in_range check (sheet_length between 1 and 32000000),
    sheet_width     bigint constraint material_form_sheet_width_in_range check (sheet_width between 1 and 32000000),
    -- Board: lengths and widths as they come.
    shortest        bigint constraint material_form_shortest_in_range check (shortest between 1 and 32000000),
    longest         bigint constraint material_form_longest_in_range check (longest between 1 and 32000000),
    narrowest       bigint constraint material_form_narrowest_in_range check (narrowest between 1 and 32000000),
    widest          bigint constraint material_form_widest_in_range check (widest between 1 and 32000000),
    surfacing       text not null default '' constraint material_form_surfacing_length check (length(surfacing) <= 20),
    kerf            bigint not null constraint material_form_kerf_in_range check (kerf between 0 and 320000),
    -- Sheet: off each edge. Bar and board: off each end.
    trim            bigint not null constraint material_form_trim_in_range check (trim between 0 and 3200000),
    -- Board: off each edge until it is straight, added to each part, and cut out as defects.
    edge_loss       bigint not null default 0 constraint material_form_edge_loss_in_range check (edge_loss between 0 and 3200000),
    rough_length    bigint not null default 0 constraint material_form_rough_length_in_range check (rough_length between 0 and 3200000),
    rough_width     bigint not null default 0 constraint material_form_rough_width_in_range check (rough_width between 0 and 3200000),
    defects_percent numeric(5, 2) not null default 0 constraint material_form_defects_in_range check (defects_percent between 0 and 80),
    version         int not null,
    constraint material_form_sheet_has_size check (form <> 'sheet' or (sheet_length is not null and sheet_width is not null)),
    constraint material_form_board_has_sizes check (form <> 'board'
        or (shortest is not null and longest is not null and narrowest is not null and widest is not null
            and shortest <= longest and narrowest <= widest))
);
create trigger material_form_audit after insert or update or delete on material_form for each row execute function write_audit_entry();

-- Bar: the lengths it is sold in.
create table material_bar_length (
    material_form_id uuid not null constraint material_bar_length_form_fk references material_form (id) on delete cascade,
    length           bigint not null constraint material_bar_length_in_range check (length between 1 and 32000000),
    primary key (material_form_id, length)
);

-- What was answered for one piece: its own settings and materials, one "name = value" a line.
create table piece_takeoff (
    -- The piece.
    id      uuid primary key,
    job_id  uuid not null,
    answers text not null default '' constraint piece_takeoff_answers_length check (length(answers) <= 8000),
    version int not null,
    constraint piece_takeoff_piece_fk foreign key (id, job_id) references piece (id, job_id)
);
create index piece_takeoff_piece_idx on piece_takeoff (id, job_id);
create trigger piece_takeoff_audit after insert or update or delete on piece_takeoff for each row execute function write_audit_entry();

-- A part of a piece, all that are alike.
create table part (
    id          uuid primary key,
    job_id      uuid not null constraint part_job_fk references job (id),
    piece_id    uuid not null,
    position    int not null,
    name        text not null constraint part_name_given check (length(btrim(name)) between 1 and 120),
    -- In one piece; times the number of pieces alike.
    quantity    int not null constraint part_quantity_in_range check (quantity between 1 and 9999),
    length      bigint not null constraint part_length_in_range check (length between 1 and 32000000),
    width       bigint not null constraint part_width_in_range check (width between 1 and 32000000),
    material_id uuid constraint part_material_fk references material (id),
    -- The name that the formulas call its material by; empty for a part listed by hand.
    slot        text not null default '' constraint part_slot_length check (length(slot) <= 40),
    grain       text not null constraint part_grain_known check (grain in ('along', 'across', 'any')),
    matched     text not null default '' constraint part_matched_length check (length(matched) <= 20),
    long_edges  int not null default 0 constraint part_long_edges_in_range check (long_edges between 0 and 2),
    short_edges int not null default 0 constraint part_short_edges_in_range check (short_edges between 0 and 2),
    faces       int not null default 0 constraint part_faces_in_range check (faces between 0 and 2),
    joints      int not null default 0 constraint part_joints_in_range check (joints between 0 and 99),
    by_hand     boolean not null,
    version     int not null,
    constraint part_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id)
);
create index part_job_idx on part (job_id);
create index part_piece_idx on part (piece_id, job_id);
create index part_material_idx on part (material_id);
create trigger part_audit after insert or update or delete on part for each row execute function write_audit_entry();
