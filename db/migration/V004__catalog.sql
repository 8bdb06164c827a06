-- What the shop does and builds with: stages, task kinds, kinds of piece, materials.
create table stage (
    id       uuid primary key,
    name     text not null constraint stage_name_given check (length(btrim(name)) between 1 and 40),
    position int not null,
    active   boolean not null default true,
    version  int not null,
    constraint stage_position_key unique (position) deferrable initially deferred
);
create unique index stage_name_key on stage (lower(name));

create table task_kind (
    id               uuid primary key,
    code             text not null constraint task_kind_code_key unique constraint task_kind_code_form check (code ~ '^[a-z0-9_]{1,60}$'),
    name             text not null constraint task_kind_name_given check (length(btrim(name)) between 1 and 120),
    stage_id         uuid not null constraint task_kind_stage_fk references stage (id),
    unit             text not null constraint task_kind_unit_known check (unit in
        ('each', 'lf', 'sf', 'bf', 'sheet', 'joint', 'panel', 'part', 'csf', 'trip', 'visit', 'job', 'lm', 'm2', 'm3', 'csm')),
    -- Starting rate: hours per unit of one skilled person.
    unit_hours       numeric(12, 5) not null constraint task_kind_unit_hours_positive check (unit_hours > 0 and unit_hours <= 1000),
    low_unit_hours   numeric(12, 5),
    high_unit_hours  numeric(12, 5),
    place            text not null default 'shop' constraint task_kind_place_known check (place in ('shop', 'site')),
    hour_class       text not null default 'direct' constraint task_kind_hour_class_known check (hour_class in
        ('direct', 'set-up', 'rework', 'call-back', 'travel', 'supply run', 'standby', 'clean-up', 'office')),
    drivers          text not null default '',
    basis            text not null default 'common practice, no source',
    caution          text not null default '',
    caution_source   text not null default '',
    active           boolean not null default true,
    version          int not null,
    constraint task_kind_range_ordered check (low_unit_hours is null or high_unit_hours is null or low_unit_hours <= high_unit_hours)
);
create unique index task_kind_name_key on task_kind (lower(name));
create index task_kind_stage_idx on task_kind (stage_id);

-- What must be done first, as an advice of order.
create table task_kind_before (
    task_kind_id   uuid not null constraint task_kind_before_kind_fk references task_kind (id) on delete cascade,
    before_kind_id uuid not null constraint task_kind_before_before_fk references task_kind (id) on delete cascade,
    primary key (task_kind_id, before_kind_id),
    constraint task_kind_before_not_itself check (task_kind_id <> before_kind_id)
);

-- Passive time that a finished task of this kind starts: touch, full cure, acclimation.
create table task_kind_wait (
    id           uuid primary key,
    task_kind_id uuid not null constraint task_kind_wait_kind_fk references task_kind (id) on delete cascade,
    position     int not null,
    what         text not null constraint task_kind_wait_what_given check (length(btrim(what)) between 1 and 120),
    minutes      int not null constraint task_kind_wait_minutes_in_range check (minutes between 1 and 525600),
    basis        text not null default 'common practice, no source',
    constraint task_kind_wait_position_key unique (task_kind_id, position)
);

create table piece_kind (
    id      uuid primary key,
    name    text not null constraint piece_kind_name_given check (length(btrim(name)) between 1 and 80),
    active  boolean not null default true,
    version int not null
);
create unique index piece_kind_name_key on piece_kind (lower(name));

-- A piece of this kind proposes these tasks: quantity = factor x measure of the piece + fixed, in the task kind's unit.
create table piece_kind_task (
    id            uuid primary key,
    piece_kind_id uuid not null constraint piece_kind_task_piece_kind_fk references piece_kind (id) on delete cascade,
    task_kind_id  uuid not null constraint piece_kind_task_task_kind_fk references task_kind (id),
    position      int not null,
    -- each: pieces; width, height, depth: ft; face: width x height in sf; floor: width x depth in sf;
    -- volume: cubic ft; perimeter: face perimeter in ft; job: once for the whole job.
    measure       text not null constraint piece_kind_task_measure_known check (measure in
        ('each', 'width', 'height', 'depth', 'face', 'floor', 'volume', 'perimeter', 'job')),
    factor        numeric(12, 5) not null constraint piece_kind_task_factor_positive check (factor > 0),
    round_up      boolean not null default false,
    constraint piece_kind_task_position_key unique (piece_kind_id, position)
);

create table material (
    id             uuid primary key,
    code           text not null constraint material_code_key unique constraint material_code_form check (code ~ '^[a-z0-9_]{1,60}$'),
    name           text not null constraint material_name_given check (length(btrim(name)) between 1 and 120),
    material_group text not null default 'other',
    unit           text not null constraint material_unit_given check (length(btrim(unit)) between 1 and 20),
    -- Net in the finished work / quantity bought, before the shop has its own figures.
    starting_yield numeric(6, 4) not null default 1 constraint material_yield_in_range check (starting_yield > 0 and starting_yield <= 1),
    -- Smallest quantity that can be bought; 1 = whole units, 0.1 = tenths.
    purchase_step  numeric(12, 4) not null default 1 constraint material_step_positive check (purchase_step > 0),
    stocked        boolean not null default false,
    supplier       text not null default '',
    yield_basis    text not null default 'common practice, no source',
    active         boolean not null default true,
    version        int not null
);
create unique index material_name_key on material (lower(name));

create table material_price (
    material_id uuid not null constraint material_price_material_fk references material (id) on delete cascade,
    from_date   date not null,
    unit_price  numeric(14, 4) not null constraint material_price_not_negative check (unit_price >= 0),
    basis       text not null default '',
    primary key (material_id, from_date)
);
