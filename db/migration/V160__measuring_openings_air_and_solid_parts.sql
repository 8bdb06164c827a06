-- What is measured at the site beyond single lengths: openings with their readings, the air of the room, and the solid
-- parts that will move in it. Lengths are whole units of 3.125 micrometres.
create table opening (
    id          uuid primary key,
    job_id      uuid not null constraint opening_job_fk references job (id),
    piece_id    uuid,
    place       text not null constraint opening_place_given check (length(btrim(place)) between 1 and 120),
    -- Plus or minus of one reading, about 19 times in 20; up to an inch.
    good_to     bigint not null constraint opening_good_to_in_range check (good_to between 1 and 8128),
    measured_on date not null,
    measured_by uuid constraint opening_measured_by_fk references person (id),
    note        text not null default '' constraint opening_note_fits check (length(note) <= 1000),
    version     int not null,
    constraint opening_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id)
);
create index opening_job_idx on opening (job_id);
create index opening_piece_idx on opening (piece_id, job_id);
create index opening_measured_by_idx on opening (measured_by);

create table opening_reading (
    -- For the trail.
    id         uuid not null default gen_random_uuid() constraint opening_reading_id_key unique,
    opening_id uuid not null constraint opening_reading_opening_fk references opening (id) on delete cascade,
    reading    text not null constraint opening_reading_known check (reading in
        ('back_floor', 'back_middle', 'back_top', 'front_floor', 'front_middle', 'front_top', 'depth_left', 'depth_right',
         'height_left', 'height_middle', 'height_right', 'diagonal_back_left', 'diagonal_back_right', 'corner_left_back',
         'corner_left_side', 'corner_left_across', 'corner_right_back', 'corner_right_side', 'corner_right_across',
         'lean_left', 'lean_right', 'lean_over', 'floor_fall', 'floor_over')),
    length     bigint not null,
    primary key (opening_id, reading),
    constraint opening_reading_in_range check (length between -32000000 and 32000000
        and (length > 0 or reading in ('lean_left', 'lean_right', 'floor_fall')))
);

-- What is in the wall or stands proud of it: studs, outlets, reveals.
create table opening_mark (
    id         uuid not null default gen_random_uuid() constraint opening_mark_id_key unique,
    opening_id uuid not null constraint opening_mark_opening_fk references opening (id) on delete cascade,
    position   int not null constraint opening_mark_position_in_range check (position between 0 and 199),
    kind       text not null constraint opening_mark_kind_known check (kind in ('stud', 'outlet', 'reveal')),
    name       text not null default '' constraint opening_mark_name_fits check (length(name) <= 80),
    -- From the left corner to the middle; the width of a reveal.
    across     bigint not null constraint opening_mark_across_in_range check (across between 0 and 32000000),
    -- From the floor to the middle.
    up         bigint constraint opening_mark_up_in_range check (up between 0 and 32000000),
    primary key (opening_id, position),
    constraint opening_mark_outlet_has_height check (kind = 'outlet' or up is null)
);

create table air_reading (
    id       uuid primary key,
    job_id   uuid not null constraint air_reading_job_fk references job (id),
    place    text not null constraint air_reading_place_given check (length(btrim(place)) between 1 and 120),
    taken_on date not null,
    taken_by uuid constraint air_reading_taken_by_fk references person (id),
    celsius  numeric(7, 4) not null constraint air_reading_celsius_in_range check (celsius between -40 and 60),
    humidity numeric(4, 1) not null constraint air_reading_humidity_in_range check (humidity between 0 and 100),
    note     text not null default '' constraint air_reading_note_fits check (length(note) <= 1000),
    version  int not null
);
create index air_reading_job_idx on air_reading (job_id);
create index air_reading_taken_by_idx on air_reading (taken_by);

create table solid_part (
    id       uuid primary key,
    job_id   uuid not null constraint solid_part_job_fk references job (id),
    piece_id uuid,
    name     text not null constraint solid_part_name_given check (length(btrim(name)) between 1 and 120),
    species  text not null constraint solid_part_species_given check (species ~ '^[a-z_]{2,60}$'),
    cut      text not null constraint solid_part_cut_known check (cut in ('flat', 'quartered', 'mixed')),
    -- Across the grain.
    width    bigint not null constraint solid_part_width_in_range check (width between 1 and 32000000),
    -- In percent of the dry weight when it is made.
    moisture numeric(3, 1) not null constraint solid_part_moisture_in_range check (moisture > 0 and moisture <= 30),
    note     text not null default '' constraint solid_part_note_fits check (length(note) <= 1000),
    version  int not null,
    constraint solid_part_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id)
);
create index solid_part_job_idx on solid_part (job_id);
create index solid_part_piece_idx on solid_part (piece_id, job_id);

create trigger opening_audit after insert or update or delete on opening for each row execute function write_audit_entry();
create trigger opening_reading_audit after insert or update or delete on opening_reading
    for each row execute function write_audit_entry();
create trigger opening_mark_audit after insert or update or delete on opening_mark for each row execute function write_audit_entry();
create trigger air_reading_audit after insert or update or delete on air_reading for each row execute function write_audit_entry();
create trigger solid_part_audit after insert or update or delete on solid_part for each row execute function write_audit_entry();
