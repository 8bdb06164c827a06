-- How far a wall is out of straight, and how the floor falls to the front.
alter table opening_reading drop constraint opening_reading_known;
alter table opening_reading add constraint opening_reading_known check (reading in
    ('back_floor', 'back_middle', 'back_top', 'front_floor', 'front_middle', 'front_top', 'depth_left', 'depth_right',
     'height_left', 'height_middle', 'height_right', 'diagonal_back_left', 'diagonal_back_right', 'corner_left_back',
     'corner_left_side', 'corner_left_across', 'corner_right_back', 'corner_right_side', 'corner_right_across',
     'bow_back', 'bow_back_over', 'bow_left', 'bow_right', 'bow_side_over',
     'lean_left', 'lean_right', 'lean_over', 'floor_fall', 'floor_over', 'floor_front', 'floor_front_over'));
alter table opening_reading drop constraint opening_reading_in_range;
alter table opening_reading add constraint opening_reading_in_range check (length between -32000000 and 32000000
    and (length > 0 or reading in ('lean_left', 'lean_right', 'floor_fall', 'floor_front', 'bow_back', 'bow_left', 'bow_right')));
