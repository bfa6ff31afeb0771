-- Every table of records as it was at an instant: views of the same names in a schema of their own, which a reader puts
-- before `public`. They are made anew after every migration, so that migrations need not think of them.
--
-- A row as it was at T is its first revision that was replaced after T, or else the row itself, if it was recorded by T.
-- Nothing is deleted, so that every row of the past is a row now: what never changes is taken from it, and is found by the
-- indexes of the table.
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
    columns text;
    never boolean := to_regprocedure('public.never_changes(text)') IS NOT NULL;
    same text[];
BEGIN
    FOR told IN
        SELECT c.oid, c.relname FROM pg_class c
        WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r'
          AND EXISTS (SELECT 1 FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attname = 'recorded_at')
          AND EXISTS (SELECT 1 FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attname = 'id'
                        AND a.atttypid = 'uuid'::regtype)
    LOOP
        same := ARRAY['id', 'recorded_at'];
        IF never THEN
            EXECUTE 'SELECT public.never_changes($1)' INTO same USING told.relname;
        END IF;
        -- A column that came after a revision was kept has its default there.
        SELECT string_agg(quote_ident(a.attname), ', ' ORDER BY a.attnum),
               string_agg(CASE
                   WHEN a.attname = ANY (same) THEN 't.' || quote_ident(a.attname)
                   ELSE format('CASE WHEN r.row_before IS NULL THEN t.%1$I ELSE %2$s END', a.attname,
                       CASE WHEN a.attnotnull AND d.adbin IS NOT NULL
                                 AND pg_get_expr(d.adbin, d.adrelid) NOT LIKE '%nextval%'
                            THEN format('coalesce(p.%I, %s)', a.attname, pg_get_expr(d.adbin, d.adrelid))
                            ELSE 'p.' || quote_ident(a.attname) END) END, ', ' ORDER BY a.attnum)
        INTO names, columns
        FROM pg_attribute a LEFT JOIN pg_attrdef d ON d.adrelid = a.attrelid AND d.adnum = a.attnum
        WHERE a.attrelid = told.oid AND a.attnum > 0 AND NOT a.attisdropped;

        EXECUTE format('CREATE VIEW as_it_was.%1$I (%2$s) AS
            SELECT %3$s FROM public.%1$I t
            LEFT JOIN LATERAL (
                SELECT v.row_before FROM public.revisions v
                WHERE v.table_name = %1$L AND v.row_id = t.id AND v.replaced_at > as_it_was.instant()
                ORDER BY v.row_version LIMIT 1) r ON true
            LEFT JOIN LATERAL jsonb_populate_record(NULL::public.%1$I, r.row_before) p ON r.row_before IS NOT NULL
            WHERE t.recorded_at <= as_it_was.instant()', told.relname, names, columns);
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
