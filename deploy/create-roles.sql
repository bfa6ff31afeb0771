-- The roles and the database for a PostgreSQL of yours, 15 or later; run once by its administrator.
-- The migrator owns the tables; the application may neither own, drop nor delete but what the migrations allow it.
CREATE ROLE culvert_migrator LOGIN PASSWORD 'change-me';
CREATE ROLE culvert_application LOGIN PASSWORD 'change-me';
CREATE DATABASE culvert OWNER culvert_migrator TEMPLATE template0 ENCODING 'UTF8';
REVOKE ALL ON DATABASE culvert FROM PUBLIC;
GRANT CONNECT ON DATABASE culvert TO culvert_application;
