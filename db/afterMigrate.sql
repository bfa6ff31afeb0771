-- Every table of records as it was at an instant: views of the same names in a schema of their own, which a reader puts
-- before `public`. They are made anew after every migration, so that migrations need not think of them.
--
-- A row as it was at T is its first revision that was replaced after T, or else the row itself, if it was recorded by T.
-- Personal data have no twins here: what was erased is not there in the past either.
DROP SCHEMA IF EXISTS as_it_was CASCADE;
CREATE SCHEMA as_it_was;
GRANT USAGE ON SCHEMA as_it_was TO "${applicationRole}";

CREATE FUNCTION as_it_was.instant() RETURNS timestamptz LANGUAGE sql STABLE AS
    $$ SELECT current_setting('culvert.as_of')::timestamptz $$;

DO $$
DECLARE
    told record;
    names text;
    now_values text;
    then_values text;
BEGIN
    FOR told IN
        SELECT c.oid, c.relname FROM pg_class c
        WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r'
          AND EXISTS (SELECT 1 FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attname = 'recorded_at')
          AND EXISTS (SELECT 1 FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attname = 'id'
                        AND a.atttypid = 'uuid'::regtype)
    LOOP
        -- row_id comes for id, so that a question for one row reaches the index of revisions. A column that came after
        -- a revision was kept has its default there.
        SELECT string_agg(quote_ident(a.attname), ', ' ORDER BY a.attnum),
               string_agg('t.' || quote_ident(a.attname), ', ' ORDER BY a.attnum),
               string_agg(CASE
                   WHEN a.attname = 'id' THEN 'r.row_id'
                   WHEN a.attnotnull AND d.adbin IS NOT NULL AND pg_get_expr(d.adbin, d.adrelid) NOT LIKE '%nextval%'
                       THEN format('coalesce(p.%I, %s)', a.attname, pg_get_expr(d.adbin, d.adrelid))
                   ELSE 'p.' || quote_ident(a.attname) END, ', ' ORDER BY a.attnum)
        INTO names, now_values, then_values
        FROM pg_attribute a LEFT JOIN pg_attrdef d ON d.adrelid = a.attrelid AND d.adnum = a.attnum
        WHERE a.attrelid = told.oid AND a.attnum > 0 AND NOT a.attisdropped;

        EXECUTE format('CREATE VIEW as_it_was.%1$I (%2$s) AS
            SELECT %3$s FROM public.%1$I t
            WHERE t.recorded_at <= as_it_was.instant()
              AND NOT EXISTS (SELECT 1 FROM public.revisions r WHERE r.table_name = %1$L AND r.row_id = t.id
                                AND r.replaced_at > as_it_was.instant())
            UNION ALL
            SELECT %4$s FROM (
                SELECT DISTINCT ON (row_id) row_id, row_before FROM public.revisions
                WHERE table_name = %1$L AND replaced_at > as_it_was.instant()
                ORDER BY row_id, row_version) r,
                jsonb_populate_record(NULL::public.%1$I, r.row_before) p
            WHERE p.recorded_at <= as_it_was.instant()', told.relname, names, now_values, then_values);
    END LOOP;

    -- Every record with its clocks as they are now, whatever table it is in.
    SELECT string_agg(format('SELECT %L::text AS table_name, id, version, recorded_at, recorded_by, revised_at,'
        ' revised_by, revision_reason FROM public.%I', c.relname, c.relname), ' UNION ALL ' ORDER BY c.relname)
    INTO names
    FROM pg_class c
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r'
      AND (SELECT count(*) FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attname IN ('id', 'version', 'recorded_at',
              'recorded_by', 'revised_at', 'revised_by', 'revision_reason')) = 7;
    EXECUTE 'CREATE VIEW as_it_was.records AS ' || names;

    -- Views of the schema read the twins of the tables that they read.
    FOR told IN SELECT c.relname, pg_get_viewdef(c.oid) AS definition FROM pg_class c
                WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'v' ORDER BY c.oid
    LOOP
        PERFORM set_config('search_path', 'as_it_was, public', true);
        EXECUTE format('CREATE VIEW as_it_was.%I AS %s', told.relname, told.definition);
        PERFORM set_config('search_path', 'public', true);
    END LOOP;
END $$;

GRANT SELECT ON ALL TABLES IN SCHEMA as_it_was TO "${applicationRole}";
GRANT EXECUTE ON FUNCTION as_it_was.instant() TO "${applicationRole}";
