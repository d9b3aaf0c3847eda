-- A reason's working is some two kilobytes: pressing them together at every write, and apart at every read, took the
-- server longer than all else about them. They stay as they are up to a page.
ALTER TABLE "reason" SET (toast_tuple_target = 8160);
