-- Photos of a job. What is said of one is apart from its two pictures, so that lists and the trail never touch their bytes.
create table photo (
    id            uuid primary key,
    job_id        uuid not null constraint photo_job_fk references job (id),
    piece_id      uuid,
    -- By the camera's own clock where that is believable, else when it arrived.
    taken_at      timestamptz not null,
    dated_by      text not null constraint photo_dated_by_known check (dated_by in ('camera', 'arrival')),
    added_at      timestamptz not null,
    added_by      uuid not null constraint photo_added_by_fk references person (id),
    caption       text not null default '' constraint photo_caption_fits check (length(caption) <= 200),
    for_client    boolean not null default false,
    -- Of the kept picture, in pixels, upright.
    width         int not null constraint photo_width_in_range check (width between 1 and 1600),
    height        int not null constraint photo_height_in_range check (height between 1 and 1600),
    -- SHA-256 of the file as it was sent: the same file again is a repeat.
    original_hash bytea not null constraint photo_original_hash_whole check (octet_length(original_hash) = 32),
    -- Taken out, but can be put back for some days; then the row goes with its pictures.
    removed_at    timestamptz,
    version       int not null,
    constraint photo_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id),
    constraint photo_camera_before_arrival check (taken_at <= added_at + interval '1 day'),
    constraint photo_removed_after_added check (removed_at >= added_at)
);
create unique index photo_once_per_job on photo (job_id, original_hash) where removed_at is null;
create index photo_job_idx on photo (job_id, taken_at desc);
create index photo_piece_idx on photo (piece_id, job_id);
create index photo_added_by_idx on photo (added_by);
create index photo_removed_idx on photo (removed_at) where removed_at is not null;

-- Written anew here, so that nothing of the file's own notes (place, camera, owner) is left in it.
create table photo_picture (
    photo_id uuid not null constraint photo_picture_photo_fk references photo (id) on delete cascade,
    size     text not null constraint photo_picture_size_known check (size in ('large', 'small')),
    jpeg     bytea not null constraint photo_picture_is_jpeg check (substring(jpeg from 1 for 3) = '\xffd8ff'),
    primary key (photo_id, size),
    constraint photo_picture_bytes_in_range check (octet_length(jpeg) <= case size when 'large' then 2000000 else 120000 end)
);
-- JPEG does not get smaller by packing.
alter table photo_picture alter column jpeg set storage external;

create trigger photo_audit after insert or update or delete on photo
    for each row execute function write_audit_entry('always', 'original_hash');
