CREATE TABLE alarm (
    call_id bigint NOT NULL,
    village_id bigint,
    sure boolean NOT NULL,
    said character varying,
    next_at timestamp with time zone,
    turn integer NOT NULL,
    note character varying NOT NULL
);
CREATE TABLE alarm_told (
    id bigint NOT NULL,
    call_id bigint NOT NULL,
    officer_id bigint NOT NULL,
    turn integer NOT NULL,
    message_id character varying NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE SEQUENCE alarm_told_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE alarm_told_id_seq OWNED BY alarm_told.id;
CREATE TABLE alembic_version (
    version_num character varying(32) NOT NULL
);
CREATE TABLE alert (
    id bigint NOT NULL,
    source character varying NOT NULL,
    digest character varying NOT NULL,
    raw bytea NOT NULL,
    received_at timestamp with time zone NOT NULL,
    became character varying(32) NOT NULL,
    sender character varying,
    identifier character varying,
    sent timestamp with time zone,
    status character varying,
    kind character varying,
    scope character varying,
    signed boolean NOT NULL,
    told json NOT NULL,
    starts_at timestamp with time zone,
    ends_at timestamp with time zone,
    replaced_by bigint,
    sealed_by character varying
);
CREATE SEQUENCE alert_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE alert_id_seq OWNED BY alert.id;
CREATE TABLE alert_reference (
    id bigint NOT NULL,
    alert_id bigint NOT NULL,
    sender character varying NOT NULL,
    identifier character varying NOT NULL,
    sent timestamp with time zone NOT NULL
);
CREATE SEQUENCE alert_reference_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE alert_reference_id_seq OWNED BY alert_reference.id;
CREATE TABLE alert_source (
    name character varying NOT NULL,
    looked_at timestamp with time zone,
    etag character varying NOT NULL,
    modified character varying NOT NULL,
    trouble character varying NOT NULL,
    well_at timestamp with time zone
);
CREATE TABLE alert_village (
    alert_id bigint NOT NULL,
    village_id bigint NOT NULL
);
CREATE TABLE audit (
    id bigint NOT NULL,
    at timestamp with time zone NOT NULL,
    officer_id bigint,
    act character varying NOT NULL,
    farmer_id bigint,
    nursery_id bigint,
    village_id bigint,
    detail character varying NOT NULL
);
CREATE SEQUENCE audit_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE audit_id_seq OWNED BY audit.id;
CREATE TABLE broadcast (
    id bigint NOT NULL,
    made_by bigint NOT NULL,
    words character varying NOT NULL,
    village_ids json NOT NULL,
    stage character varying NOT NULL,
    practice character varying,
    made_at timestamp with time zone NOT NULL,
    sent_at timestamp with time zone
);
CREATE SEQUENCE broadcast_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE broadcast_id_seq OWNED BY broadcast.id;
CREATE TABLE broadcast_phone (
    broadcast_id bigint NOT NULL,
    phone character varying NOT NULL,
    message_id character varying NOT NULL
);
CREATE TABLE calendar_day (
    id bigint NOT NULL,
    village_id bigint NOT NULL,
    task character varying(32) NOT NULL,
    day date NOT NULL,
    names character varying NOT NULL,
    sequence integer NOT NULL,
    changed_at timestamp with time zone NOT NULL
);
CREATE SEQUENCE calendar_day_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE calendar_day_id_seq OWNED BY calendar_day.id;
CREATE TABLE call_for_help (
    id bigint NOT NULL,
    farmer_id bigint NOT NULL,
    nursery_id bigint,
    about character varying NOT NULL,
    words character varying NOT NULL,
    at timestamp with time zone NOT NULL,
    handled_at timestamp with time zone,
    handled_by bigint
);
CREATE SEQUENCE call_for_help_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE call_for_help_id_seq OWNED BY call_for_help.id;
CREATE TABLE counted_day (
    day date NOT NULL
);
CREATE TABLE counter (
    name character varying NOT NULL,
    number integer NOT NULL
);
CREATE TABLE day_count (
    id bigint NOT NULL,
    day date NOT NULL,
    village_id bigint,
    waiting integer NOT NULL,
    accepted integer NOT NULL,
    delivered integer NOT NULL,
    failed integer NOT NULL,
    expired integer NOT NULL,
    withdrawn integer NOT NULL,
    segments integer NOT NULL,
    texts integer NOT NULL,
    sessions integer NOT NULL,
    rings integer NOT NULL
);
CREATE SEQUENCE day_count_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE day_count_id_seq OWNED BY day_count.id;
CREATE TABLE desk_deed (
    id bigint NOT NULL,
    officer_id bigint NOT NULL,
    at timestamp with time zone NOT NULL,
    kind character varying NOT NULL,
    count integer NOT NULL,
    before json NOT NULL,
    undone_at timestamp with time zone
);
CREATE SEQUENCE desk_deed_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE desk_deed_id_seq OWNED BY desk_deed.id;
CREATE TABLE desk_mark (
    id bigint NOT NULL,
    kind character varying NOT NULL,
    farmer_id bigint NOT NULL,
    officer_id bigint NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE SEQUENCE desk_mark_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE desk_mark_id_seq OWNED BY desk_mark.id;
CREATE TABLE desk_note (
    key character varying NOT NULL,
    officer_id bigint NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE TABLE enrolment (
    farmer_id bigint NOT NULL,
    officer_id bigint,
    way character varying NOT NULL,
    at timestamp with time zone NOT NULL,
    asked integer NOT NULL,
    asked_at timestamp with time zone NOT NULL,
    answer character varying,
    answered_at timestamp with time zone,
    wishes json NOT NULL
);
CREATE TABLE farmer (
    id bigint NOT NULL,
    phone character varying NOT NULL,
    language character varying,
    village_id bigint,
    consent_at timestamp with time zone,
    stopped_at timestamp with time zone,
    name character varying,
    paused_at timestamp with time zone
);
CREATE SEQUENCE farmer_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE farmer_id_seq OWNED BY farmer.id;
CREATE TABLE heard_by (
    phone character varying NOT NULL,
    line character varying NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE TABLE incoming (
    gateway_id character varying NOT NULL,
    phone character varying NOT NULL,
    text character varying NOT NULL,
    channel character varying(32) NOT NULL,
    step character varying(32) NOT NULL,
    session_id character varying,
    at timestamp with time zone NOT NULL,
    taken_at timestamp with time zone NOT NULL,
    failed boolean NOT NULL,
    answer_text character varying,
    answer_more boolean,
    village_id bigint,
    private boolean DEFAULT false NOT NULL
);
CREATE TABLE kept_secret (
    name character varying NOT NULL,
    value character varying NOT NULL,
    made_at timestamp with time zone NOT NULL
);
CREATE TABLE known_browser (
    key character varying NOT NULL,
    officer_id bigint NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE TABLE line (
    name character varying NOT NULL,
    answered_at timestamp with time zone,
    took_at timestamp with time zone,
    rests_until timestamp with time zone,
    said character varying NOT NULL,
    held_at timestamp with time zone,
    held_why character varying NOT NULL
);
CREATE TABLE line_owner (
    name character varying NOT NULL,
    owner character varying NOT NULL,
    until timestamp with time zone NOT NULL
);
CREATE TABLE nursery (
    id bigint NOT NULL,
    farmer_id bigint NOT NULL,
    label character varying NOT NULL,
    name character varying,
    field_area_m2 double precision NOT NULL,
    germination double precision NOT NULL,
    spacing_row_cm double precision NOT NULL,
    spacing_hill_cm double precision NOT NULL,
    seedlings_per_hill integer NOT NULL,
    grain_weight_g double precision NOT NULL,
    pail_litres double precision NOT NULL,
    establishment double precision NOT NULL,
    area_typed character varying NOT NULL,
    germination_known boolean NOT NULL,
    sow_date date NOT NULL,
    made_on date NOT NULL,
    sown boolean NOT NULL,
    sow_assumed boolean NOT NULL,
    uncover_date date,
    uncovered boolean NOT NULL,
    transplant_date date,
    transplanted_on date,
    closed boolean NOT NULL,
    changed_at timestamp with time zone NOT NULL,
    test_begun date,
    test_counted boolean DEFAULT false NOT NULL,
    resown boolean DEFAULT false NOT NULL,
    practice character varying DEFAULT 'mat'::character varying NOT NULL,
    gap_filling double precision DEFAULT '0'::double precision NOT NULL,
    urea_on date,
    hill_seedlings integer,
    more_on date,
    more_mats integer,
    no_result boolean DEFAULT false NOT NULL,
    slow_seed boolean DEFAULT false NOT NULL,
    cool_water boolean DEFAULT false NOT NULL,
    water_c double precision,
    delay_why character varying(32),
    leaves double precision,
    leaves_on date,
    lost_mats integer DEFAULT 0 NOT NULL,
    climate json,
    felt_c double precision,
    felt_on date
);
CREATE TABLE nursery_event (
    id bigint NOT NULL,
    nursery_id bigint NOT NULL,
    kind character varying NOT NULL,
    day date NOT NULL,
    by character varying(32) NOT NULL,
    about json NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE SEQUENCE nursery_event_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE nursery_event_id_seq OWNED BY nursery_event.id;
CREATE SEQUENCE nursery_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE nursery_id_seq OWNED BY nursery.id;
CREATE TABLE office_list (
    id bigint NOT NULL,
    officer_id bigint NOT NULL,
    name character varying NOT NULL,
    content bytea,
    choices json NOT NULL,
    state character varying NOT NULL,
    counts json NOT NULL,
    rejects bytea,
    made_at timestamp with time zone NOT NULL,
    changed_at timestamp with time zone NOT NULL
);
CREATE SEQUENCE office_list_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE office_list_id_seq OWNED BY office_list.id;
CREATE TABLE officer (
    id bigint NOT NULL,
    phone character varying NOT NULL,
    name character varying NOT NULL,
    code_hash character varying NOT NULL,
    language character varying NOT NULL,
    is_lead boolean NOT NULL,
    password_hash character varying,
    one_time_until timestamp with time zone,
    closed_at timestamp with time zone,
    totp_salt character varying,
    totp_last integer,
    next_code_hash character varying,
    code_uses integer DEFAULT 0 NOT NULL
);
CREATE SEQUENCE officer_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE officer_id_seq OWNED BY officer.id;
CREATE TABLE officer_text (
    id bigint NOT NULL,
    officer_id bigint NOT NULL,
    farmer_id bigint NOT NULL,
    nursery_id bigint,
    call_id bigint,
    message_id character varying NOT NULL,
    words character varying NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE SEQUENCE officer_text_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE officer_text_id_seq OWNED BY officer_text.id;
CREATE TABLE officer_village (
    officer_id bigint NOT NULL,
    village_id bigint NOT NULL
);
CREATE TABLE one_time_code (
    phone character varying NOT NULL,
    code_hash character varying NOT NULL,
    sent_at timestamp with time zone NOT NULL,
    tries integer NOT NULL
);
CREATE TABLE outbox (
    id bigint NOT NULL,
    message_id character varying NOT NULL,
    phone character varying NOT NULL,
    text character varying NOT NULL,
    kind character varying(32) NOT NULL,
    focus json,
    nursery_id bigint,
    warning_id bigint,
    due_at timestamp with time zone NOT NULL,
    not_after timestamp with time zone NOT NULL,
    urgent boolean NOT NULL,
    state character varying(32) NOT NULL,
    attempts integer NOT NULL,
    encoding character varying NOT NULL,
    segments integer NOT NULL,
    lease_until timestamp with time zone,
    accepted_at timestamp with time zone,
    delivered_at timestamp with time zone,
    ended_at timestamp with time zone,
    detail character varying NOT NULL,
    created_at timestamp with time zone NOT NULL,
    village_id bigint,
    private boolean DEFAULT false NOT NULL,
    lane integer DEFAULT 2 NOT NULL,
    line character varying
);
CREATE SEQUENCE outbox_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE outbox_id_seq OWNED BY outbox.id;
CREATE TABLE part (
    id bigint NOT NULL,
    line character varying NOT NULL,
    part character varying NOT NULL,
    message_id character varying,
    fate character varying,
    at timestamp with time zone NOT NULL,
    detail character varying NOT NULL
);
CREATE SEQUENCE part_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE part_id_seq OWNED BY part.id;
CREATE TABLE past_phone (
    id bigint NOT NULL,
    farmer_id bigint NOT NULL,
    phone character varying NOT NULL,
    until timestamp with time zone NOT NULL
);
CREATE SEQUENCE past_phone_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE past_phone_id_seq OWNED BY past_phone.id;
CREATE TABLE piece (
    id bigint NOT NULL,
    line character varying NOT NULL,
    phone character varying NOT NULL,
    ref character varying NOT NULL,
    parts integer NOT NULL,
    part integer NOT NULL,
    gateway_id character varying NOT NULL,
    text character varying NOT NULL,
    at timestamp with time zone NOT NULL,
    kept_at timestamp with time zone NOT NULL,
    joined boolean NOT NULL
);
CREATE SEQUENCE piece_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE piece_id_seq OWNED BY piece.id;
CREATE TABLE pulse (
    part character varying NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE TABLE reminder (
    id bigint NOT NULL,
    nursery_id bigint NOT NULL,
    task character varying(32) NOT NULL,
    day date NOT NULL,
    due_at timestamp with time zone NOT NULL,
    not_after timestamp with time zone NOT NULL,
    state character varying(32) NOT NULL,
    asked integer NOT NULL,
    message_id character varying,
    answer character varying,
    answered_at timestamp with time zone,
    rests boolean DEFAULT false NOT NULL
);
CREATE SEQUENCE reminder_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE reminder_id_seq OWNED BY reminder.id;
CREATE TABLE season_result (
    id bigint NOT NULL,
    nursery_id bigint NOT NULL,
    farmer_id bigint NOT NULL,
    ended_on date NOT NULL,
    field_area_m2 double precision NOT NULL,
    planted_area_m2 double precision NOT NULL,
    mats integer NOT NULL,
    mats_left double precision NOT NULL,
    resown boolean NOT NULL,
    establishment double precision NOT NULL,
    seed_share double precision DEFAULT '1'::double precision NOT NULL
);
CREATE SEQUENCE season_result_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE season_result_id_seq OWNED BY season_result.id;
CREATE TABLE set_aside (
    nursery_id bigint NOT NULL,
    why character varying NOT NULL,
    since timestamp with time zone NOT NULL
);
CREATE TABLE sign_in_try (
    id bigint NOT NULL,
    door character varying NOT NULL,
    who character varying NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE SEQUENCE sign_in_try_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE sign_in_try_id_seq OWNED BY sign_in_try.id;
CREATE TABLE talk (
    phone character varying NOT NULL,
    session json NOT NULL,
    changed_at timestamp with time zone NOT NULL
);
CREATE TABLE unread_reply (
    id bigint NOT NULL,
    language character varying NOT NULL,
    asked character varying NOT NULL,
    text character varying NOT NULL,
    at timestamp with time zone NOT NULL,
    phone character varying,
    farmer_id bigint,
    lately boolean DEFAULT false NOT NULL
);
CREATE SEQUENCE unread_reply_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE unread_reply_id_seq OWNED BY unread_reply.id;
CREATE TABLE ussd_talk (
    session_id character varying NOT NULL,
    phone character varying NOT NULL,
    pages json NOT NULL,
    page integer NOT NULL,
    focus json,
    changed_at timestamp with time zone NOT NULL
);
CREATE TABLE village (
    id bigint NOT NULL,
    name character varying NOT NULL,
    zone character varying NOT NULL,
    practices json DEFAULT '["mat"]'::json NOT NULL,
    latitude double precision,
    longitude double precision,
    climate json
);
CREATE TABLE village_geocode (
    village_id bigint NOT NULL,
    name character varying NOT NULL,
    value character varying NOT NULL
);
CREATE TABLE village_handover (
    id bigint NOT NULL,
    village_id bigint NOT NULL,
    from_officer_id bigint,
    to_officer_id bigint NOT NULL,
    by_officer_id bigint NOT NULL,
    note character varying NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE SEQUENCE village_handover_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE village_handover_id_seq OWNED BY village_handover.id;
CREATE SEQUENCE village_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE village_id_seq OWNED BY village.id;
CREATE TABLE village_warmth (
    id bigint NOT NULL,
    village_id bigint NOT NULL,
    day date NOT NULL,
    mean_c double precision NOT NULL,
    officer_id bigint NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE SEQUENCE village_warmth_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE village_warmth_id_seq OWNED BY village_warmth.id;
CREATE TABLE visit (
    id bigint NOT NULL,
    nursery_id bigint NOT NULL,
    officer_id bigint NOT NULL,
    visited_on date NOT NULL,
    note character varying NOT NULL,
    at timestamp with time zone NOT NULL
);
CREATE SEQUENCE visit_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE visit_id_seq OWNED BY visit.id;
CREATE TABLE warning (
    id bigint NOT NULL,
    village_id bigint NOT NULL,
    officer_id bigint NOT NULL,
    starts_at timestamp with time zone NOT NULL,
    ends_at timestamp with time zone NOT NULL,
    issued_at timestamp with time zone NOT NULL,
    cleared_at timestamp with time zone,
    recalled_at timestamp with time zone
);
CREATE TABLE warning_draft (
    id bigint NOT NULL,
    source character varying(32) NOT NULL,
    made_by bigint,
    alert_id bigint,
    starts_at timestamp with time zone NOT NULL,
    ends_at timestamp with time zone NOT NULL,
    certainty character varying(32) NOT NULL,
    hazard character varying NOT NULL,
    words character varying NOT NULL,
    created_at timestamp with time zone NOT NULL,
    decided_at timestamp with time zone,
    decided_by bigint,
    decision character varying(32)
);
CREATE SEQUENCE warning_draft_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE warning_draft_id_seq OWNED BY warning_draft.id;
CREATE TABLE warning_draft_village (
    draft_id bigint NOT NULL,
    village_id bigint NOT NULL,
    warning_id bigint
);
CREATE SEQUENCE warning_id_seq
    START WITH 1
    INCREMENT BY 1
    NO MINVALUE
    NO MAXVALUE
    CACHE 1;
ALTER SEQUENCE warning_id_seq OWNED BY warning.id;
CREATE TABLE warning_phone (
    warning_id bigint NOT NULL,
    phone character varying NOT NULL,
    answer character varying,
    answered_at timestamp with time zone,
    asked_again_at timestamp with time zone
);
CREATE TABLE web_session (
    key character varying NOT NULL,
    officer_id bigint NOT NULL,
    begun_at timestamp with time zone NOT NULL,
    seen_at timestamp with time zone NOT NULL,
    proved_at timestamp with time zone NOT NULL,
    browser character varying NOT NULL
);
ALTER TABLE ONLY alarm_told ALTER COLUMN id SET DEFAULT nextval('alarm_told_id_seq'::regclass);
ALTER TABLE ONLY alert ALTER COLUMN id SET DEFAULT nextval('alert_id_seq'::regclass);
ALTER TABLE ONLY alert_reference ALTER COLUMN id SET DEFAULT nextval('alert_reference_id_seq'::regclass);
ALTER TABLE ONLY audit ALTER COLUMN id SET DEFAULT nextval('audit_id_seq'::regclass);
ALTER TABLE ONLY broadcast ALTER COLUMN id SET DEFAULT nextval('broadcast_id_seq'::regclass);
ALTER TABLE ONLY calendar_day ALTER COLUMN id SET DEFAULT nextval('calendar_day_id_seq'::regclass);
ALTER TABLE ONLY call_for_help ALTER COLUMN id SET DEFAULT nextval('call_for_help_id_seq'::regclass);
ALTER TABLE ONLY day_count ALTER COLUMN id SET DEFAULT nextval('day_count_id_seq'::regclass);
ALTER TABLE ONLY desk_deed ALTER COLUMN id SET DEFAULT nextval('desk_deed_id_seq'::regclass);
ALTER TABLE ONLY desk_mark ALTER COLUMN id SET DEFAULT nextval('desk_mark_id_seq'::regclass);
ALTER TABLE ONLY farmer ALTER COLUMN id SET DEFAULT nextval('farmer_id_seq'::regclass);
ALTER TABLE ONLY nursery ALTER COLUMN id SET DEFAULT nextval('nursery_id_seq'::regclass);
ALTER TABLE ONLY nursery_event ALTER COLUMN id SET DEFAULT nextval('nursery_event_id_seq'::regclass);
ALTER TABLE ONLY office_list ALTER COLUMN id SET DEFAULT nextval('office_list_id_seq'::regclass);
ALTER TABLE ONLY officer ALTER COLUMN id SET DEFAULT nextval('officer_id_seq'::regclass);
ALTER TABLE ONLY officer_text ALTER COLUMN id SET DEFAULT nextval('officer_text_id_seq'::regclass);
ALTER TABLE ONLY outbox ALTER COLUMN id SET DEFAULT nextval('outbox_id_seq'::regclass);
ALTER TABLE ONLY part ALTER COLUMN id SET DEFAULT nextval('part_id_seq'::regclass);
ALTER TABLE ONLY past_phone ALTER COLUMN id SET DEFAULT nextval('past_phone_id_seq'::regclass);
ALTER TABLE ONLY piece ALTER COLUMN id SET DEFAULT nextval('piece_id_seq'::regclass);
ALTER TABLE ONLY reminder ALTER COLUMN id SET DEFAULT nextval('reminder_id_seq'::regclass);
ALTER TABLE ONLY season_result ALTER COLUMN id SET DEFAULT nextval('season_result_id_seq'::regclass);
ALTER TABLE ONLY sign_in_try ALTER COLUMN id SET DEFAULT nextval('sign_in_try_id_seq'::regclass);
ALTER TABLE ONLY unread_reply ALTER COLUMN id SET DEFAULT nextval('unread_reply_id_seq'::regclass);
ALTER TABLE ONLY village ALTER COLUMN id SET DEFAULT nextval('village_id_seq'::regclass);
ALTER TABLE ONLY village_handover ALTER COLUMN id SET DEFAULT nextval('village_handover_id_seq'::regclass);
ALTER TABLE ONLY village_warmth ALTER COLUMN id SET DEFAULT nextval('village_warmth_id_seq'::regclass);
ALTER TABLE ONLY visit ALTER COLUMN id SET DEFAULT nextval('visit_id_seq'::regclass);
ALTER TABLE ONLY warning ALTER COLUMN id SET DEFAULT nextval('warning_id_seq'::regclass);
ALTER TABLE ONLY warning_draft ALTER COLUMN id SET DEFAULT nextval('warning_draft_id_seq'::regclass);
ALTER TABLE ONLY alembic_version
    ADD CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num);
ALTER TABLE ONLY alarm
    ADD CONSTRAINT pk_alarm PRIMARY KEY (call_id);
ALTER TABLE ONLY alarm_told
    ADD CONSTRAINT pk_alarm_told PRIMARY KEY (id);
ALTER TABLE ONLY alert
    ADD CONSTRAINT pk_alert PRIMARY KEY (id);
ALTER TABLE ONLY alert_reference
    ADD CONSTRAINT pk_alert_reference PRIMARY KEY (id);
ALTER TABLE ONLY alert_source
    ADD CONSTRAINT pk_alert_source PRIMARY KEY (name);
ALTER TABLE ONLY alert_village
    ADD CONSTRAINT pk_alert_village PRIMARY KEY (alert_id, village_id);
ALTER TABLE ONLY audit
    ADD CONSTRAINT pk_audit PRIMARY KEY (id);
ALTER TABLE ONLY broadcast
    ADD CONSTRAINT pk_broadcast PRIMARY KEY (id);
ALTER TABLE ONLY broadcast_phone
    ADD CONSTRAINT pk_broadcast_phone PRIMARY KEY (broadcast_id, phone);
ALTER TABLE ONLY calendar_day
    ADD CONSTRAINT pk_calendar_day PRIMARY KEY (id);
ALTER TABLE ONLY call_for_help
    ADD CONSTRAINT pk_call_for_help PRIMARY KEY (id);
ALTER TABLE ONLY counted_day
    ADD CONSTRAINT pk_counted_day PRIMARY KEY (day);
ALTER TABLE ONLY counter
    ADD CONSTRAINT pk_counter PRIMARY KEY (name);
ALTER TABLE ONLY day_count
    ADD CONSTRAINT pk_day_count PRIMARY KEY (id);
ALTER TABLE ONLY desk_deed
    ADD CONSTRAINT pk_desk_deed PRIMARY KEY (id);
ALTER TABLE ONLY desk_mark
    ADD CONSTRAINT pk_desk_mark PRIMARY KEY (id);
ALTER TABLE ONLY desk_note
    ADD CONSTRAINT pk_desk_note PRIMARY KEY (key, officer_id);
ALTER TABLE ONLY enrolment
    ADD CONSTRAINT pk_enrolment PRIMARY KEY (farmer_id);
ALTER TABLE ONLY farmer
    ADD CONSTRAINT pk_farmer PRIMARY KEY (id);
ALTER TABLE ONLY heard_by
    ADD CONSTRAINT pk_heard_by PRIMARY KEY (phone);
ALTER TABLE ONLY incoming
    ADD CONSTRAINT pk_incoming PRIMARY KEY (gateway_id);
ALTER TABLE ONLY kept_secret
    ADD CONSTRAINT pk_kept_secret PRIMARY KEY (name);
ALTER TABLE ONLY known_browser
    ADD CONSTRAINT pk_known_browser PRIMARY KEY (key);
ALTER TABLE ONLY line
    ADD CONSTRAINT pk_line PRIMARY KEY (name);
ALTER TABLE ONLY line_owner
    ADD CONSTRAINT pk_line_owner PRIMARY KEY (name);
ALTER TABLE ONLY nursery
    ADD CONSTRAINT pk_nursery PRIMARY KEY (id);
ALTER TABLE ONLY nursery_event
    ADD CONSTRAINT pk_nursery_event PRIMARY KEY (id);
ALTER TABLE ONLY office_list
    ADD CONSTRAINT pk_office_list PRIMARY KEY (id);
ALTER TABLE ONLY officer
    ADD CONSTRAINT pk_officer PRIMARY KEY (id);
ALTER TABLE ONLY officer_text
    ADD CONSTRAINT pk_officer_text PRIMARY KEY (id);
ALTER TABLE ONLY officer_village
    ADD CONSTRAINT pk_officer_village PRIMARY KEY (officer_id, village_id);
ALTER TABLE ONLY one_time_code
    ADD CONSTRAINT pk_one_time_code PRIMARY KEY (phone);
ALTER TABLE ONLY outbox
    ADD CONSTRAINT pk_outbox PRIMARY KEY (id);
ALTER TABLE ONLY part
    ADD CONSTRAINT pk_part PRIMARY KEY (id);
ALTER TABLE ONLY past_phone
    ADD CONSTRAINT pk_past_phone PRIMARY KEY (id);
ALTER TABLE ONLY piece
    ADD CONSTRAINT pk_piece PRIMARY KEY (id);
ALTER TABLE ONLY pulse
    ADD CONSTRAINT pk_pulse PRIMARY KEY (part);
ALTER TABLE ONLY reminder
    ADD CONSTRAINT pk_reminder PRIMARY KEY (id);
ALTER TABLE ONLY season_result
    ADD CONSTRAINT pk_season_result PRIMARY KEY (id);
ALTER TABLE ONLY set_aside
    ADD CONSTRAINT pk_set_aside PRIMARY KEY (nursery_id);
ALTER TABLE ONLY sign_in_try
    ADD CONSTRAINT pk_sign_in_try PRIMARY KEY (id);
ALTER TABLE ONLY talk
    ADD CONSTRAINT pk_talk PRIMARY KEY (phone);
ALTER TABLE ONLY unread_reply
    ADD CONSTRAINT pk_unread_reply PRIMARY KEY (id);
ALTER TABLE ONLY ussd_talk
    ADD CONSTRAINT pk_ussd_talk PRIMARY KEY (session_id);
ALTER TABLE ONLY village
    ADD CONSTRAINT pk_village PRIMARY KEY (id);
ALTER TABLE ONLY village_geocode
    ADD CONSTRAINT pk_village_geocode PRIMARY KEY (village_id, name, value);
ALTER TABLE ONLY village_handover
    ADD CONSTRAINT pk_village_handover PRIMARY KEY (id);
ALTER TABLE ONLY village_warmth
    ADD CONSTRAINT pk_village_warmth PRIMARY KEY (id);
ALTER TABLE ONLY visit
    ADD CONSTRAINT pk_visit PRIMARY KEY (id);
ALTER TABLE ONLY warning
    ADD CONSTRAINT pk_warning PRIMARY KEY (id);
ALTER TABLE ONLY warning_draft
    ADD CONSTRAINT pk_warning_draft PRIMARY KEY (id);
ALTER TABLE ONLY warning_draft_village
    ADD CONSTRAINT pk_warning_draft_village PRIMARY KEY (draft_id, village_id);
ALTER TABLE ONLY warning_phone
    ADD CONSTRAINT pk_warning_phone PRIMARY KEY (warning_id, phone);
ALTER TABLE ONLY web_session
    ADD CONSTRAINT pk_web_session PRIMARY KEY (key);
ALTER TABLE ONLY alert
    ADD CONSTRAINT uq_alert_digest UNIQUE (digest);
ALTER TABLE ONLY broadcast_phone
    ADD CONSTRAINT uq_broadcast_phone_message_id UNIQUE (message_id);
ALTER TABLE ONLY calendar_day
    ADD CONSTRAINT uq_calendar_day_village_id_day_task UNIQUE (village_id, day, task);
ALTER TABLE ONLY farmer
    ADD CONSTRAINT uq_farmer_phone UNIQUE (phone);
ALTER TABLE ONLY officer
    ADD CONSTRAINT uq_officer_phone UNIQUE (phone);
ALTER TABLE ONLY officer_text
    ADD CONSTRAINT uq_officer_text_message_id UNIQUE (message_id);
ALTER TABLE ONLY outbox
    ADD CONSTRAINT uq_outbox_message_id UNIQUE (message_id);
ALTER TABLE ONLY piece
    ADD CONSTRAINT uq_piece_line_phone_ref_parts_part UNIQUE (line, phone, ref, parts, part);
ALTER TABLE ONLY reminder
    ADD CONSTRAINT uq_reminder_nursery_id_task_day UNIQUE (nursery_id, task, day);
ALTER TABLE ONLY season_result
    ADD CONSTRAINT uq_season_result_nursery_id UNIQUE (nursery_id);
ALTER TABLE ONLY village
    ADD CONSTRAINT uq_village_name UNIQUE (name);
ALTER TABLE ONLY village_warmth
    ADD CONSTRAINT uq_village_warmth_village_id_day UNIQUE (village_id, day);
CREATE INDEX ix_alarm_next_at ON alarm USING btree (next_at);
CREATE INDEX ix_alarm_told_call_id_officer_id ON alarm_told USING btree (call_id, officer_id);
CREATE INDEX ix_alarm_told_message_id ON alarm_told USING btree (message_id);
CREATE INDEX ix_alarm_told_officer_id ON alarm_told USING btree (officer_id);
CREATE INDEX ix_alert_became_received_at ON alert USING btree (became, received_at);
CREATE INDEX ix_alert_reference_alert_id ON alert_reference USING btree (alert_id);
CREATE INDEX ix_alert_reference_sender_identifier_sent ON alert_reference USING btree (sender, identifier, sent);
CREATE INDEX ix_alert_replaced_by ON alert USING btree (replaced_by);
CREATE INDEX ix_alert_sender_identifier_sent ON alert USING btree (sender, identifier, sent);
CREATE INDEX ix_alert_village_village_id ON alert_village USING btree (village_id);
CREATE INDEX ix_audit_at ON audit USING btree (at);
CREATE INDEX ix_audit_nursery_id ON audit USING btree (nursery_id);
CREATE INDEX ix_audit_officer_id ON audit USING btree (officer_id);
CREATE INDEX ix_audit_village_id ON audit USING btree (village_id);
CREATE INDEX ix_broadcast_made_at ON broadcast USING btree (made_at);
CREATE INDEX ix_call_for_help_farmer_id ON call_for_help USING btree (farmer_id);
CREATE INDEX ix_day_count_day_village_id ON day_count USING btree (day, village_id);
CREATE INDEX ix_desk_deed_officer_id_at ON desk_deed USING btree (officer_id, at);
CREATE INDEX ix_desk_mark_farmer_id ON desk_mark USING btree (farmer_id);
CREATE INDEX ix_desk_mark_kind_farmer_id ON desk_mark USING btree (kind, farmer_id);
CREATE INDEX ix_enrolment_answer_asked_at ON enrolment USING btree (answer, asked_at);
CREATE INDEX ix_enrolment_officer_id ON enrolment USING btree (officer_id);
CREATE INDEX ix_farmer_village_id ON farmer USING btree (village_id);
CREATE INDEX ix_incoming_at_gateway_id ON incoming USING btree (at, gateway_id);
CREATE INDEX ix_incoming_phone_at ON incoming USING btree (phone, at);
CREATE INDEX ix_incoming_village_id_at_channel_step ON incoming USING btree (village_id, at, channel, step);
CREATE INDEX ix_known_browser_officer_id ON known_browser USING btree (officer_id);
CREATE INDEX ix_nursery_event_nursery_id ON nursery_event USING btree (nursery_id);
CREATE INDEX ix_nursery_farmer_id ON nursery USING btree (farmer_id);
CREATE INDEX ix_nursery_open ON nursery USING btree (sow_date) WHERE (closed IS FALSE);
CREATE INDEX ix_nursery_sow_date ON nursery USING btree (sow_date);
CREATE INDEX ix_office_list_officer_id ON office_list USING btree (officer_id);
CREATE INDEX ix_officer_text_call_id ON officer_text USING btree (call_id);
CREATE INDEX ix_officer_text_farmer_id ON officer_text USING btree (farmer_id);
CREATE INDEX ix_officer_village_village_id ON officer_village USING btree (village_id);
CREATE INDEX ix_outbox_due_at_id ON outbox USING btree (due_at, id);
CREATE INDEX ix_outbox_nursery_id ON outbox USING btree (nursery_id);
CREATE INDEX ix_outbox_phone_state ON outbox USING btree (phone, state);
CREATE INDEX ix_outbox_state_due_at ON outbox USING btree (state, due_at);
CREATE INDEX ix_outbox_state_lane_due_at_id ON outbox USING btree (state, lane, due_at, id);
CREATE INDEX ix_outbox_village_id_due_at_state_segments ON outbox USING btree (village_id, due_at, state, segments);
CREATE INDEX ix_outbox_warning_id ON outbox USING btree (warning_id);
CREATE INDEX ix_part_at ON part USING btree (at);
CREATE INDEX ix_part_line_part ON part USING btree (line, part);
CREATE INDEX ix_part_message_id ON part USING btree (message_id);
CREATE INDEX ix_past_phone_farmer_id ON past_phone USING btree (farmer_id);
CREATE INDEX ix_past_phone_phone ON past_phone USING btree (phone);
CREATE INDEX ix_piece_kept_at ON piece USING btree (kept_at);
CREATE INDEX ix_reminder_answer_day ON reminder USING btree (answer, day);
CREATE INDEX ix_reminder_asked ON reminder USING btree (task, due_at) WHERE (((state)::text = 'sent'::text) AND (rests IS FALSE));
CREATE INDEX ix_reminder_message_id ON reminder USING btree (message_id);
CREATE INDEX ix_reminder_nursery_id_state_due_at ON reminder USING btree (nursery_id, state, due_at);
CREATE INDEX ix_reminder_state_due_at ON reminder USING btree (state, due_at);
CREATE INDEX ix_reminder_to_come ON reminder USING btree (due_at, nursery_id) WHERE (((state)::text = 'planned'::text) AND (rests IS FALSE));
CREATE INDEX ix_season_result_farmer_id ON season_result USING btree (farmer_id);
CREATE INDEX ix_sign_in_try_door_who_at ON sign_in_try USING btree (door, who, at);
CREATE INDEX ix_unread_reply_farmer_id ON unread_reply USING btree (farmer_id);
CREATE INDEX ix_unread_reply_phone ON unread_reply USING btree (phone);
CREATE INDEX ix_ussd_talk_phone ON ussd_talk USING btree (phone);
CREATE INDEX ix_village_handover_village_id ON village_handover USING btree (village_id);
CREATE INDEX ix_visit_nursery_id_visited_on ON visit USING btree (nursery_id, visited_on);
CREATE INDEX ix_warning_draft_alert_id ON warning_draft USING btree (alert_id);
CREATE INDEX ix_warning_draft_ends_at ON warning_draft USING btree (ends_at);
CREATE INDEX ix_warning_draft_village_village_id ON warning_draft_village USING btree (village_id);
CREATE INDEX ix_warning_draft_village_warning_id ON warning_draft_village USING btree (warning_id);
CREATE INDEX ix_warning_village_id ON warning USING btree (village_id);
CREATE INDEX ix_web_session_officer_id ON web_session USING btree (officer_id);
ALTER TABLE ONLY alarm
    ADD CONSTRAINT fk_alarm_call_id_call_for_help FOREIGN KEY (call_id) REFERENCES call_for_help(id);
ALTER TABLE ONLY alarm_told
    ADD CONSTRAINT fk_alarm_told_call_id_alarm FOREIGN KEY (call_id) REFERENCES alarm(call_id);
ALTER TABLE ONLY alarm_told
    ADD CONSTRAINT fk_alarm_told_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY alarm
    ADD CONSTRAINT fk_alarm_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY alert_reference
    ADD CONSTRAINT fk_alert_reference_alert_id_alert FOREIGN KEY (alert_id) REFERENCES alert(id);
ALTER TABLE ONLY alert
    ADD CONSTRAINT fk_alert_replaced_by_alert FOREIGN KEY (replaced_by) REFERENCES alert(id);
ALTER TABLE ONLY alert_village
    ADD CONSTRAINT fk_alert_village_alert_id_alert FOREIGN KEY (alert_id) REFERENCES alert(id);
ALTER TABLE ONLY alert_village
    ADD CONSTRAINT fk_alert_village_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY audit
    ADD CONSTRAINT fk_audit_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY audit
    ADD CONSTRAINT fk_audit_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY audit
    ADD CONSTRAINT fk_audit_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY audit
    ADD CONSTRAINT fk_audit_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY broadcast
    ADD CONSTRAINT fk_broadcast_made_by_officer FOREIGN KEY (made_by) REFERENCES officer(id);
ALTER TABLE ONLY broadcast_phone
    ADD CONSTRAINT fk_broadcast_phone_broadcast_id_broadcast FOREIGN KEY (broadcast_id) REFERENCES broadcast(id);
ALTER TABLE ONLY calendar_day
    ADD CONSTRAINT fk_calendar_day_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY call_for_help
    ADD CONSTRAINT fk_call_for_help_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY call_for_help
    ADD CONSTRAINT fk_call_for_help_handled_by_officer FOREIGN KEY (handled_by) REFERENCES officer(id);
ALTER TABLE ONLY call_for_help
    ADD CONSTRAINT fk_call_for_help_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY day_count
    ADD CONSTRAINT fk_day_count_day_counted_day FOREIGN KEY (day) REFERENCES counted_day(day);
ALTER TABLE ONLY day_count
    ADD CONSTRAINT fk_day_count_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY desk_deed
    ADD CONSTRAINT fk_desk_deed_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY desk_mark
    ADD CONSTRAINT fk_desk_mark_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY desk_mark
    ADD CONSTRAINT fk_desk_mark_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY desk_note
    ADD CONSTRAINT fk_desk_note_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY enrolment
    ADD CONSTRAINT fk_enrolment_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY enrolment
    ADD CONSTRAINT fk_enrolment_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY farmer
    ADD CONSTRAINT fk_farmer_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY incoming
    ADD CONSTRAINT fk_incoming_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY known_browser
    ADD CONSTRAINT fk_known_browser_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY nursery_event
    ADD CONSTRAINT fk_nursery_event_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY nursery
    ADD CONSTRAINT fk_nursery_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY office_list
    ADD CONSTRAINT fk_office_list_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY officer_text
    ADD CONSTRAINT fk_officer_text_call_id_call_for_help FOREIGN KEY (call_id) REFERENCES call_for_help(id);
ALTER TABLE ONLY officer_text
    ADD CONSTRAINT fk_officer_text_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY officer_text
    ADD CONSTRAINT fk_officer_text_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY officer_text
    ADD CONSTRAINT fk_officer_text_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY officer_village
    ADD CONSTRAINT fk_officer_village_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY officer_village
    ADD CONSTRAINT fk_officer_village_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY outbox
    ADD CONSTRAINT fk_outbox_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY outbox
    ADD CONSTRAINT fk_outbox_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY outbox
    ADD CONSTRAINT fk_outbox_warning_id_warning FOREIGN KEY (warning_id) REFERENCES warning(id);
ALTER TABLE ONLY past_phone
    ADD CONSTRAINT fk_past_phone_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY reminder
    ADD CONSTRAINT fk_reminder_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY season_result
    ADD CONSTRAINT fk_season_result_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY season_result
    ADD CONSTRAINT fk_season_result_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY set_aside
    ADD CONSTRAINT fk_set_aside_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY unread_reply
    ADD CONSTRAINT fk_unread_reply_farmer_id_farmer FOREIGN KEY (farmer_id) REFERENCES farmer(id);
ALTER TABLE ONLY village_geocode
    ADD CONSTRAINT fk_village_geocode_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY village_handover
    ADD CONSTRAINT fk_village_handover_by_officer_id_officer FOREIGN KEY (by_officer_id) REFERENCES officer(id);
ALTER TABLE ONLY village_handover
    ADD CONSTRAINT fk_village_handover_from_officer_id_officer FOREIGN KEY (from_officer_id) REFERENCES officer(id);
ALTER TABLE ONLY village_handover
    ADD CONSTRAINT fk_village_handover_to_officer_id_officer FOREIGN KEY (to_officer_id) REFERENCES officer(id);
ALTER TABLE ONLY village_handover
    ADD CONSTRAINT fk_village_handover_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY village_warmth
    ADD CONSTRAINT fk_village_warmth_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY village_warmth
    ADD CONSTRAINT fk_village_warmth_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY visit
    ADD CONSTRAINT fk_visit_nursery_id_nursery FOREIGN KEY (nursery_id) REFERENCES nursery(id);
ALTER TABLE ONLY visit
    ADD CONSTRAINT fk_visit_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY warning_draft
    ADD CONSTRAINT fk_warning_draft_decided_by_officer FOREIGN KEY (decided_by) REFERENCES officer(id);
ALTER TABLE ONLY warning_draft
    ADD CONSTRAINT fk_warning_draft_made_by_officer FOREIGN KEY (made_by) REFERENCES officer(id);
ALTER TABLE ONLY warning_draft_village
    ADD CONSTRAINT fk_warning_draft_village_draft_id_warning_draft FOREIGN KEY (draft_id) REFERENCES warning_draft(id);
ALTER TABLE ONLY warning_draft_village
    ADD CONSTRAINT fk_warning_draft_village_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY warning_draft_village
    ADD CONSTRAINT fk_warning_draft_village_warning_id_warning FOREIGN KEY (warning_id) REFERENCES warning(id);
ALTER TABLE ONLY warning
    ADD CONSTRAINT fk_warning_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
ALTER TABLE ONLY warning_phone
    ADD CONSTRAINT fk_warning_phone_warning_id_warning FOREIGN KEY (warning_id) REFERENCES warning(id);
ALTER TABLE ONLY warning
    ADD CONSTRAINT fk_warning_village_id_village FOREIGN KEY (village_id) REFERENCES village(id);
ALTER TABLE ONLY web_session
    ADD CONSTRAINT fk_web_session_officer_id_officer FOREIGN KEY (officer_id) REFERENCES officer(id);
