-- A link that was asked for at the start of the server, by whoever holds the machine, was made by nobody who signed in.
alter table invitation alter column created_by drop not null;
