-- Where the client took options, what was said of the hours of all that was agreed, on the day of the yes; never changed. It is
-- judged in place of the forecast of the bid alone, which answers for no option.
create table agreed_forecast (
    bid_id         uuid primary key constraint agreed_forecast_bid_fk references bid (id),
    calibration_id uuid constraint agreed_forecast_calibration_fk references calibration (id),
    made_at        timestamptz not null,
    -- As in bid_forecast.
    unwidened      double precision[] not null,
    hours          double precision[] not null
);
create index agreed_forecast_calibration_idx on agreed_forecast (calibration_id);
create trigger agreed_forecast_frozen before update on agreed_forecast for each row execute function keep_bid_line_frozen();
