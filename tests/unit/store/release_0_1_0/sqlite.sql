CREATE TABLE alarm (
	call_id INTEGER NOT NULL,
	village_id INTEGER,
	sure BOOLEAN NOT NULL,
	said VARCHAR,
	next_at DATETIME,
	turn INTEGER NOT NULL,
	note VARCHAR NOT NULL,
	CONSTRAINT pk_alarm PRIMARY KEY (call_id),
	CONSTRAINT fk_alarm_call_id_call_for_help FOREIGN KEY(call_id) REFERENCES call_for_help (id),
	CONSTRAINT fk_alarm_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE alarm_told (
	id INTEGER NOT NULL,
	call_id INTEGER NOT NULL,
	officer_id INTEGER NOT NULL,
	turn INTEGER NOT NULL,
	message_id VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_alarm_told PRIMARY KEY (id),
	CONSTRAINT fk_alarm_told_call_id_alarm FOREIGN KEY(call_id) REFERENCES alarm (call_id),
	CONSTRAINT fk_alarm_told_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL,
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
CREATE TABLE alert (
	id INTEGER NOT NULL,
	source VARCHAR NOT NULL,
	digest VARCHAR NOT NULL,
	raw BLOB NOT NULL,
	received_at DATETIME NOT NULL,
	became VARCHAR(32) NOT NULL,
	sender VARCHAR,
	identifier VARCHAR,
	sent DATETIME,
	status VARCHAR,
	kind VARCHAR,
	scope VARCHAR,
	signed BOOLEAN NOT NULL,
	told JSON NOT NULL,
	starts_at DATETIME,
	ends_at DATETIME,
	replaced_by INTEGER, sealed_by VARCHAR,
	CONSTRAINT pk_alert PRIMARY KEY (id),
	CONSTRAINT uq_alert_digest UNIQUE (digest),
	CONSTRAINT fk_alert_replaced_by_alert FOREIGN KEY(replaced_by) REFERENCES alert (id)
);
CREATE TABLE alert_reference (
	id INTEGER NOT NULL,
	alert_id INTEGER NOT NULL,
	sender VARCHAR NOT NULL,
	identifier VARCHAR NOT NULL,
	sent DATETIME NOT NULL,
	CONSTRAINT pk_alert_reference PRIMARY KEY (id),
	CONSTRAINT fk_alert_reference_alert_id_alert FOREIGN KEY(alert_id) REFERENCES alert (id)
);
CREATE TABLE alert_source (
	name VARCHAR NOT NULL,
	looked_at DATETIME,
	etag VARCHAR NOT NULL,
	modified VARCHAR NOT NULL,
	trouble VARCHAR NOT NULL,
	well_at DATETIME,
	CONSTRAINT pk_alert_source PRIMARY KEY (name)
);
CREATE TABLE alert_village (
	alert_id INTEGER NOT NULL,
	village_id INTEGER NOT NULL,
	CONSTRAINT pk_alert_village PRIMARY KEY (alert_id, village_id),
	CONSTRAINT fk_alert_village_alert_id_alert FOREIGN KEY(alert_id) REFERENCES alert (id),
	CONSTRAINT fk_alert_village_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE audit (
	id INTEGER NOT NULL,
	at DATETIME NOT NULL,
	officer_id INTEGER,
	act VARCHAR NOT NULL,
	farmer_id INTEGER,
	nursery_id INTEGER,
	village_id INTEGER,
	detail VARCHAR NOT NULL,
	CONSTRAINT pk_audit PRIMARY KEY (id),
	CONSTRAINT fk_audit_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id),
	CONSTRAINT fk_audit_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id),
	CONSTRAINT fk_audit_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id),
	CONSTRAINT fk_audit_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE broadcast (
	id INTEGER NOT NULL,
	made_by INTEGER NOT NULL,
	words VARCHAR NOT NULL,
	village_ids JSON NOT NULL,
	stage VARCHAR NOT NULL,
	practice VARCHAR,
	made_at DATETIME NOT NULL,
	sent_at DATETIME,
	CONSTRAINT pk_broadcast PRIMARY KEY (id),
	CONSTRAINT fk_broadcast_made_by_officer FOREIGN KEY(made_by) REFERENCES officer (id)
);
CREATE TABLE broadcast_phone (
	broadcast_id INTEGER NOT NULL,
	phone VARCHAR NOT NULL,
	message_id VARCHAR NOT NULL,
	CONSTRAINT pk_broadcast_phone PRIMARY KEY (broadcast_id, phone),
	CONSTRAINT fk_broadcast_phone_broadcast_id_broadcast FOREIGN KEY(broadcast_id) REFERENCES broadcast (id),
	CONSTRAINT uq_broadcast_phone_message_id UNIQUE (message_id)
);
CREATE TABLE calendar_day (
	id INTEGER NOT NULL,
	village_id INTEGER NOT NULL,
	task VARCHAR(32) NOT NULL,
	day DATE NOT NULL,
	names VARCHAR NOT NULL,
	sequence INTEGER NOT NULL,
	changed_at DATETIME NOT NULL,
	CONSTRAINT pk_calendar_day PRIMARY KEY (id),
	CONSTRAINT uq_calendar_day_village_id_day_task UNIQUE (village_id, day, task),
	CONSTRAINT fk_calendar_day_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE "call_for_help" (
	id INTEGER NOT NULL,
	farmer_id INTEGER NOT NULL,
	nursery_id INTEGER,
	about VARCHAR NOT NULL,
	words VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	handled_at DATETIME,
	handled_by INTEGER,
	CONSTRAINT pk_call_for_help PRIMARY KEY (id),
	CONSTRAINT fk_call_for_help_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id),
	CONSTRAINT fk_call_for_help_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id),
	CONSTRAINT fk_call_for_help_handled_by_officer FOREIGN KEY(handled_by) REFERENCES officer (id)
);
CREATE TABLE counted_day (
	day DATE NOT NULL,
	CONSTRAINT pk_counted_day PRIMARY KEY (day)
);
CREATE TABLE counter (
	name VARCHAR NOT NULL,
	number INTEGER NOT NULL,
	CONSTRAINT pk_counter PRIMARY KEY (name)
);
CREATE TABLE day_count (
	id INTEGER NOT NULL,
	day DATE NOT NULL,
	village_id INTEGER,
	waiting INTEGER NOT NULL,
	accepted INTEGER NOT NULL,
	delivered INTEGER NOT NULL,
	failed INTEGER NOT NULL,
	expired INTEGER NOT NULL,
	withdrawn INTEGER NOT NULL,
	segments INTEGER NOT NULL,
	texts INTEGER NOT NULL,
	sessions INTEGER NOT NULL,
	rings INTEGER NOT NULL,
	CONSTRAINT pk_day_count PRIMARY KEY (id),
	CONSTRAINT fk_day_count_day_counted_day FOREIGN KEY(day) REFERENCES counted_day (day),
	CONSTRAINT fk_day_count_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE desk_deed (
	id INTEGER NOT NULL,
	officer_id INTEGER NOT NULL,
	at DATETIME NOT NULL,
	kind VARCHAR NOT NULL,
	count INTEGER NOT NULL,
	"before" JSON NOT NULL,
	undone_at DATETIME,
	CONSTRAINT pk_desk_deed PRIMARY KEY (id),
	CONSTRAINT fk_desk_deed_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE desk_mark (
	id INTEGER NOT NULL,
	kind VARCHAR NOT NULL,
	farmer_id INTEGER NOT NULL,
	officer_id INTEGER NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_desk_mark PRIMARY KEY (id),
	CONSTRAINT fk_desk_mark_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id),
	CONSTRAINT fk_desk_mark_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE desk_note (
	"key" VARCHAR NOT NULL,
	officer_id INTEGER NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_desk_note PRIMARY KEY ("key", officer_id),
	CONSTRAINT fk_desk_note_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE enrolment (
	farmer_id INTEGER NOT NULL,
	officer_id INTEGER,
	way VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	asked INTEGER NOT NULL,
	asked_at DATETIME NOT NULL,
	answer VARCHAR,
	answered_at DATETIME,
	wishes JSON NOT NULL,
	CONSTRAINT pk_enrolment PRIMARY KEY (farmer_id),
	CONSTRAINT fk_enrolment_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id),
	CONSTRAINT fk_enrolment_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE farmer (
	id INTEGER NOT NULL,
	phone VARCHAR NOT NULL,
	language VARCHAR,
	village_id INTEGER,
	consent_at DATETIME,
	stopped_at DATETIME, name VARCHAR, paused_at DATETIME,
	CONSTRAINT pk_farmer PRIMARY KEY (id),
	CONSTRAINT uq_farmer_phone UNIQUE (phone),
	CONSTRAINT fk_farmer_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE heard_by (
	phone VARCHAR NOT NULL,
	line VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_heard_by PRIMARY KEY (phone)
);
CREATE TABLE "incoming" (
	gateway_id VARCHAR NOT NULL,
	phone VARCHAR NOT NULL,
	text VARCHAR NOT NULL,
	channel VARCHAR(32) NOT NULL,
	step VARCHAR(32) NOT NULL,
	session_id VARCHAR,
	at DATETIME NOT NULL,
	taken_at DATETIME NOT NULL,
	failed BOOLEAN NOT NULL,
	answer_text VARCHAR,
	answer_more BOOLEAN,
	village_id INTEGER,
	private BOOLEAN DEFAULT 0 NOT NULL,
	CONSTRAINT pk_incoming PRIMARY KEY (gateway_id),
	CONSTRAINT fk_incoming_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE kept_secret (
	name VARCHAR NOT NULL,
	value VARCHAR NOT NULL,
	made_at DATETIME NOT NULL,
	CONSTRAINT pk_kept_secret PRIMARY KEY (name)
);
CREATE TABLE known_browser (
	"key" VARCHAR NOT NULL,
	officer_id INTEGER NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_known_browser PRIMARY KEY ("key"),
	CONSTRAINT fk_known_browser_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE line (
	name VARCHAR NOT NULL,
	answered_at DATETIME,
	took_at DATETIME,
	rests_until DATETIME,
	said VARCHAR NOT NULL,
	held_at DATETIME,
	held_why VARCHAR NOT NULL,
	CONSTRAINT pk_line PRIMARY KEY (name)
);
CREATE TABLE line_owner (
	name VARCHAR NOT NULL,
	owner VARCHAR NOT NULL,
	until DATETIME NOT NULL,
	CONSTRAINT pk_line_owner PRIMARY KEY (name)
);
CREATE TABLE "nursery" (
	id INTEGER NOT NULL,
	farmer_id INTEGER NOT NULL,
	label VARCHAR NOT NULL,
	name VARCHAR,
	field_area_m2 DOUBLE NOT NULL,
	germination DOUBLE NOT NULL,
	spacing_row_cm DOUBLE NOT NULL,
	spacing_hill_cm DOUBLE NOT NULL,
	seedlings_per_hill INTEGER NOT NULL,
	grain_weight_g DOUBLE NOT NULL,
	pail_litres DOUBLE NOT NULL,
	establishment DOUBLE NOT NULL,
	area_typed VARCHAR NOT NULL,
	germination_known BOOLEAN NOT NULL,
	sow_date DATE NOT NULL,
	made_on DATE NOT NULL,
	sown BOOLEAN NOT NULL,
	sow_assumed BOOLEAN NOT NULL,
	uncover_date DATE,
	uncovered BOOLEAN NOT NULL,
	transplant_date DATE,
	transplanted_on DATE,
	closed BOOLEAN NOT NULL,
	changed_at DATETIME NOT NULL,
	test_begun DATE,
	test_counted BOOLEAN DEFAULT 0 NOT NULL,
	resown BOOLEAN DEFAULT 0 NOT NULL,
	practice VARCHAR DEFAULT 'mat' NOT NULL,
	gap_filling DOUBLE DEFAULT '0' NOT NULL,
	urea_on DATE,
	hill_seedlings INTEGER,
	more_on DATE,
	more_mats INTEGER,
	no_result BOOLEAN DEFAULT 0 NOT NULL,
	slow_seed BOOLEAN DEFAULT 0 NOT NULL,
	cool_water BOOLEAN DEFAULT 0 NOT NULL,
	water_c DOUBLE, delay_why VARCHAR(32), leaves DOUBLE, leaves_on DATE, lost_mats INTEGER DEFAULT '0' NOT NULL, climate JSON, felt_c DOUBLE, felt_on DATE,
	CONSTRAINT pk_nursery PRIMARY KEY (id),
	CONSTRAINT fk_nursery_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id)
);
CREATE TABLE nursery_event (
	id INTEGER NOT NULL,
	nursery_id INTEGER NOT NULL,
	kind VARCHAR NOT NULL,
	day DATE NOT NULL,
	"by" VARCHAR(32) NOT NULL,
	about JSON NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_nursery_event PRIMARY KEY (id),
	CONSTRAINT fk_nursery_event_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id)
);
CREATE TABLE office_list (
	id INTEGER NOT NULL,
	officer_id INTEGER NOT NULL,
	name VARCHAR NOT NULL,
	content BLOB,
	choices JSON NOT NULL,
	state VARCHAR NOT NULL,
	counts JSON NOT NULL,
	rejects BLOB,
	made_at DATETIME NOT NULL,
	changed_at DATETIME NOT NULL,
	CONSTRAINT pk_office_list PRIMARY KEY (id),
	CONSTRAINT fk_office_list_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE "officer" (
	id INTEGER NOT NULL,
	phone VARCHAR NOT NULL,
	name VARCHAR NOT NULL,
	code_hash VARCHAR NOT NULL,
	language VARCHAR NOT NULL,
	is_lead BOOLEAN NOT NULL,
	password_hash VARCHAR,
	one_time_until DATETIME,
	closed_at DATETIME,
	totp_salt VARCHAR,
	totp_last INTEGER,
	next_code_hash VARCHAR,
	code_uses INTEGER DEFAULT '0' NOT NULL,
	CONSTRAINT pk_officer PRIMARY KEY (id),
	CONSTRAINT uq_officer_phone UNIQUE (phone)
);
CREATE TABLE officer_text (
	id INTEGER NOT NULL,
	officer_id INTEGER NOT NULL,
	farmer_id INTEGER NOT NULL,
	nursery_id INTEGER,
	call_id INTEGER,
	message_id VARCHAR NOT NULL,
	words VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_officer_text PRIMARY KEY (id),
	CONSTRAINT fk_officer_text_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id),
	CONSTRAINT fk_officer_text_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id),
	CONSTRAINT fk_officer_text_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id),
	CONSTRAINT fk_officer_text_call_id_call_for_help FOREIGN KEY(call_id) REFERENCES call_for_help (id),
	CONSTRAINT uq_officer_text_message_id UNIQUE (message_id)
);
CREATE TABLE officer_village (
	officer_id INTEGER NOT NULL,
	village_id INTEGER NOT NULL,
	CONSTRAINT pk_officer_village PRIMARY KEY (officer_id, village_id),
	CONSTRAINT fk_officer_village_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id),
	CONSTRAINT fk_officer_village_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE one_time_code (
	phone VARCHAR NOT NULL,
	code_hash VARCHAR NOT NULL,
	sent_at DATETIME NOT NULL,
	tries INTEGER NOT NULL,
	CONSTRAINT pk_one_time_code PRIMARY KEY (phone)
);
CREATE TABLE "outbox" (
	id INTEGER NOT NULL,
	message_id VARCHAR NOT NULL,
	phone VARCHAR NOT NULL,
	text VARCHAR NOT NULL,
	kind VARCHAR(32) NOT NULL,
	focus JSON,
	nursery_id INTEGER,
	warning_id INTEGER,
	due_at DATETIME NOT NULL,
	not_after DATETIME NOT NULL,
	urgent BOOLEAN NOT NULL,
	state VARCHAR(32) NOT NULL,
	attempts INTEGER NOT NULL,
	encoding VARCHAR NOT NULL,
	segments INTEGER NOT NULL,
	lease_until DATETIME,
	accepted_at DATETIME,
	delivered_at DATETIME,
	ended_at DATETIME,
	detail VARCHAR NOT NULL,
	created_at DATETIME NOT NULL,
	village_id INTEGER,
	private BOOLEAN DEFAULT 0 NOT NULL, lane INTEGER DEFAULT '2' NOT NULL, line VARCHAR,
	CONSTRAINT pk_outbox PRIMARY KEY (id),
	CONSTRAINT fk_outbox_warning_id_warning FOREIGN KEY(warning_id) REFERENCES warning (id),
	CONSTRAINT uq_outbox_message_id UNIQUE (message_id),
	CONSTRAINT fk_outbox_village_id_village FOREIGN KEY(village_id) REFERENCES village (id),
	CONSTRAINT fk_outbox_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id)
);
CREATE TABLE part (
	id INTEGER NOT NULL,
	line VARCHAR NOT NULL,
	part VARCHAR NOT NULL,
	message_id VARCHAR,
	fate VARCHAR,
	at DATETIME NOT NULL,
	detail VARCHAR NOT NULL,
	CONSTRAINT pk_part PRIMARY KEY (id)
);
CREATE TABLE past_phone (
	id INTEGER NOT NULL,
	farmer_id INTEGER NOT NULL,
	phone VARCHAR NOT NULL,
	until DATETIME NOT NULL,
	CONSTRAINT pk_past_phone PRIMARY KEY (id),
	CONSTRAINT fk_past_phone_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id)
);
CREATE TABLE piece (
	id INTEGER NOT NULL,
	line VARCHAR NOT NULL,
	phone VARCHAR NOT NULL,
	ref VARCHAR NOT NULL,
	parts INTEGER NOT NULL,
	part INTEGER NOT NULL,
	gateway_id VARCHAR NOT NULL,
	text VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	kept_at DATETIME NOT NULL,
	joined BOOLEAN NOT NULL,
	CONSTRAINT pk_piece PRIMARY KEY (id),
	CONSTRAINT uq_piece_line_phone_ref_parts_part UNIQUE (line, phone, ref, parts, part)
);
CREATE TABLE pulse (
	part VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_pulse PRIMARY KEY (part)
);
CREATE TABLE "reminder" (
	id INTEGER NOT NULL,
	nursery_id INTEGER NOT NULL,
	task VARCHAR(32) NOT NULL,
	day DATE NOT NULL,
	due_at DATETIME NOT NULL,
	not_after DATETIME NOT NULL,
	state VARCHAR(32) NOT NULL,
	asked INTEGER NOT NULL,
	message_id VARCHAR,
	answer VARCHAR,
	answered_at DATETIME,
	rests BOOLEAN DEFAULT 0 NOT NULL,
	CONSTRAINT pk_reminder PRIMARY KEY (id),
	CONSTRAINT fk_reminder_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id),
	CONSTRAINT uq_reminder_nursery_id_task_day UNIQUE (nursery_id, task, day)
);
CREATE TABLE season_result (
	id INTEGER NOT NULL,
	nursery_id INTEGER NOT NULL,
	farmer_id INTEGER NOT NULL,
	ended_on DATE NOT NULL,
	field_area_m2 DOUBLE NOT NULL,
	planted_area_m2 DOUBLE NOT NULL,
	mats INTEGER NOT NULL,
	mats_left DOUBLE NOT NULL,
	resown BOOLEAN NOT NULL,
	establishment DOUBLE NOT NULL, seed_share DOUBLE DEFAULT '1' NOT NULL,
	CONSTRAINT pk_season_result PRIMARY KEY (id),
	CONSTRAINT uq_season_result_nursery_id UNIQUE (nursery_id),
	CONSTRAINT fk_season_result_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id),
	CONSTRAINT fk_season_result_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id)
);
CREATE TABLE set_aside (
	nursery_id INTEGER NOT NULL,
	why VARCHAR NOT NULL,
	since DATETIME NOT NULL,
	CONSTRAINT pk_set_aside PRIMARY KEY (nursery_id),
	CONSTRAINT fk_set_aside_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id)
);
CREATE TABLE sign_in_try (
	id INTEGER NOT NULL,
	door VARCHAR NOT NULL,
	who VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_sign_in_try PRIMARY KEY (id)
);
CREATE TABLE talk (
	phone VARCHAR NOT NULL,
	session JSON NOT NULL,
	changed_at DATETIME NOT NULL,
	CONSTRAINT pk_talk PRIMARY KEY (phone)
);
CREATE TABLE "unread_reply" (
	id INTEGER NOT NULL,
	language VARCHAR NOT NULL,
	asked VARCHAR NOT NULL,
	text VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	phone VARCHAR,
	farmer_id INTEGER,
	lately BOOLEAN DEFAULT 0 NOT NULL,
	CONSTRAINT pk_unread_reply PRIMARY KEY (id),
	CONSTRAINT fk_unread_reply_farmer_id_farmer FOREIGN KEY(farmer_id) REFERENCES farmer (id)
);
CREATE TABLE ussd_talk (
	session_id VARCHAR NOT NULL,
	phone VARCHAR NOT NULL,
	pages JSON NOT NULL,
	page INTEGER NOT NULL,
	focus JSON,
	changed_at DATETIME NOT NULL,
	CONSTRAINT pk_ussd_talk PRIMARY KEY (session_id)
);
CREATE TABLE village (
	id INTEGER NOT NULL,
	name VARCHAR NOT NULL,
	zone VARCHAR NOT NULL, practices JSON DEFAULT '["mat"]' NOT NULL, latitude DOUBLE, longitude DOUBLE, climate JSON,
	CONSTRAINT pk_village PRIMARY KEY (id),
	CONSTRAINT uq_village_name UNIQUE (name)
);
CREATE TABLE village_geocode (
	village_id INTEGER NOT NULL,
	name VARCHAR NOT NULL,
	value VARCHAR NOT NULL,
	CONSTRAINT pk_village_geocode PRIMARY KEY (village_id, name, value),
	CONSTRAINT fk_village_geocode_village_id_village FOREIGN KEY(village_id) REFERENCES village (id)
);
CREATE TABLE village_handover (
	id INTEGER NOT NULL,
	village_id INTEGER NOT NULL,
	from_officer_id INTEGER,
	to_officer_id INTEGER NOT NULL,
	by_officer_id INTEGER NOT NULL,
	note VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_village_handover PRIMARY KEY (id),
	CONSTRAINT fk_village_handover_village_id_village FOREIGN KEY(village_id) REFERENCES village (id),
	CONSTRAINT fk_village_handover_from_officer_id_officer FOREIGN KEY(from_officer_id) REFERENCES officer (id),
	CONSTRAINT fk_village_handover_to_officer_id_officer FOREIGN KEY(to_officer_id) REFERENCES officer (id),
	CONSTRAINT fk_village_handover_by_officer_id_officer FOREIGN KEY(by_officer_id) REFERENCES officer (id)
);
CREATE TABLE village_warmth (
	id INTEGER NOT NULL,
	village_id INTEGER NOT NULL,
	day DATE NOT NULL,
	mean_c DOUBLE NOT NULL,
	officer_id INTEGER NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_village_warmth PRIMARY KEY (id),
	CONSTRAINT uq_village_warmth_village_id_day UNIQUE (village_id, day),
	CONSTRAINT fk_village_warmth_village_id_village FOREIGN KEY(village_id) REFERENCES village (id),
	CONSTRAINT fk_village_warmth_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE visit (
	id INTEGER NOT NULL,
	nursery_id INTEGER NOT NULL,
	officer_id INTEGER NOT NULL,
	visited_on DATE NOT NULL,
	note VARCHAR NOT NULL,
	at DATETIME NOT NULL,
	CONSTRAINT pk_visit PRIMARY KEY (id),
	CONSTRAINT fk_visit_nursery_id_nursery FOREIGN KEY(nursery_id) REFERENCES nursery (id),
	CONSTRAINT fk_visit_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE warning (
	id INTEGER NOT NULL,
	village_id INTEGER NOT NULL,
	officer_id INTEGER NOT NULL,
	starts_at DATETIME NOT NULL,
	ends_at DATETIME NOT NULL,
	issued_at DATETIME NOT NULL,
	cleared_at DATETIME, recalled_at DATETIME,
	CONSTRAINT pk_warning PRIMARY KEY (id),
	CONSTRAINT fk_warning_village_id_village FOREIGN KEY(village_id) REFERENCES village (id),
	CONSTRAINT fk_warning_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE TABLE warning_draft (
	id INTEGER NOT NULL,
	source VARCHAR(32) NOT NULL,
	made_by INTEGER,
	alert_id INTEGER,
	starts_at DATETIME NOT NULL,
	ends_at DATETIME NOT NULL,
	certainty VARCHAR(32) NOT NULL,
	hazard VARCHAR NOT NULL,
	words VARCHAR NOT NULL,
	created_at DATETIME NOT NULL,
	decided_at DATETIME,
	decided_by INTEGER,
	decision VARCHAR(32),
	CONSTRAINT pk_warning_draft PRIMARY KEY (id),
	CONSTRAINT fk_warning_draft_made_by_officer FOREIGN KEY(made_by) REFERENCES officer (id),
	CONSTRAINT fk_warning_draft_decided_by_officer FOREIGN KEY(decided_by) REFERENCES officer (id)
);
CREATE TABLE warning_draft_village (
	draft_id INTEGER NOT NULL,
	village_id INTEGER NOT NULL,
	warning_id INTEGER,
	CONSTRAINT pk_warning_draft_village PRIMARY KEY (draft_id, village_id),
	CONSTRAINT fk_warning_draft_village_draft_id_warning_draft FOREIGN KEY(draft_id) REFERENCES warning_draft (id),
	CONSTRAINT fk_warning_draft_village_village_id_village FOREIGN KEY(village_id) REFERENCES village (id),
	CONSTRAINT fk_warning_draft_village_warning_id_warning FOREIGN KEY(warning_id) REFERENCES warning (id)
);
CREATE TABLE warning_phone (
	warning_id INTEGER NOT NULL,
	phone VARCHAR NOT NULL,
	answer VARCHAR,
	answered_at DATETIME, asked_again_at DATETIME,
	CONSTRAINT pk_warning_phone PRIMARY KEY (warning_id, phone),
	CONSTRAINT fk_warning_phone_warning_id_warning FOREIGN KEY(warning_id) REFERENCES warning (id)
);
CREATE TABLE web_session (
	"key" VARCHAR NOT NULL,
	officer_id INTEGER NOT NULL,
	begun_at DATETIME NOT NULL,
	seen_at DATETIME NOT NULL,
	proved_at DATETIME NOT NULL,
	browser VARCHAR NOT NULL,
	CONSTRAINT pk_web_session PRIMARY KEY ("key"),
	CONSTRAINT fk_web_session_officer_id_officer FOREIGN KEY(officer_id) REFERENCES officer (id)
);
CREATE INDEX ix_farmer_village_id ON farmer (village_id);
CREATE INDEX ix_officer_village_village_id ON officer_village (village_id);
CREATE INDEX ix_ussd_talk_phone ON ussd_talk (phone);
CREATE INDEX ix_warning_village_id ON warning (village_id);
CREATE INDEX ix_call_for_help_farmer_id ON call_for_help (farmer_id);
CREATE INDEX ix_sign_in_try_door_who_at ON sign_in_try (door, who, at);
CREATE INDEX ix_audit_at ON audit (at);
CREATE INDEX ix_audit_nursery_id ON audit (nursery_id);
CREATE INDEX ix_audit_officer_id ON audit (officer_id);
CREATE INDEX ix_audit_village_id ON audit (village_id);
CREATE INDEX ix_visit_nursery_id_visited_on ON visit (nursery_id, visited_on);
CREATE INDEX ix_officer_text_farmer_id ON officer_text (farmer_id);
CREATE INDEX ix_officer_text_call_id ON officer_text (call_id);
CREATE INDEX ix_village_handover_village_id ON village_handover (village_id);
CREATE INDEX ix_season_result_farmer_id ON season_result (farmer_id);
CREATE INDEX ix_warning_draft_alert_id ON warning_draft (alert_id);
CREATE INDEX ix_warning_draft_ends_at ON warning_draft (ends_at);
CREATE INDEX ix_warning_draft_village_warning_id ON warning_draft_village (warning_id);
CREATE INDEX ix_warning_draft_village_village_id ON warning_draft_village (village_id);
CREATE INDEX ix_alert_replaced_by ON alert (replaced_by);
CREATE INDEX ix_alert_sender_identifier_sent ON alert (sender, identifier, sent);
CREATE INDEX ix_alert_reference_sender_identifier_sent ON alert_reference (sender, identifier, sent);
CREATE INDEX ix_alert_reference_alert_id ON alert_reference (alert_id);
CREATE INDEX ix_alert_village_village_id ON alert_village (village_id);
CREATE INDEX ix_enrolment_officer_id ON enrolment (officer_id);
CREATE INDEX ix_enrolment_answer_asked_at ON enrolment (answer, asked_at);
CREATE INDEX ix_past_phone_farmer_id ON past_phone (farmer_id);
CREATE INDEX ix_past_phone_phone ON past_phone (phone);
CREATE INDEX ix_office_list_officer_id ON office_list (officer_id);
CREATE INDEX ix_broadcast_made_at ON broadcast (made_at);
CREATE INDEX ix_alert_became_received_at ON alert (became, received_at);
CREATE INDEX ix_nursery_farmer_id ON nursery (farmer_id);
CREATE INDEX ix_nursery_open ON nursery (sow_date) WHERE closed IS 0;
CREATE INDEX ix_nursery_sow_date ON nursery (sow_date);
CREATE INDEX ix_day_count_day_village_id ON day_count (day, village_id);
CREATE INDEX ix_alarm_next_at ON alarm (next_at);
CREATE INDEX ix_alarm_told_call_id_officer_id ON alarm_told (call_id, officer_id);
CREATE INDEX ix_alarm_told_officer_id ON alarm_told (officer_id);
CREATE INDEX ix_alarm_told_message_id ON alarm_told (message_id);
CREATE INDEX ix_incoming_phone_at ON incoming (phone, at);
CREATE INDEX ix_incoming_village_id_at_channel_step ON incoming (village_id, at, channel, step);
CREATE INDEX ix_incoming_at_gateway_id ON incoming (at, gateway_id);
CREATE INDEX ix_outbox_phone_state ON outbox (phone, state);
CREATE INDEX ix_outbox_due_at_id ON outbox (due_at, id);
CREATE INDEX ix_outbox_village_id_due_at_state_segments ON outbox (village_id, due_at, state, segments);
CREATE INDEX ix_outbox_nursery_id ON outbox (nursery_id);
CREATE INDEX ix_outbox_warning_id ON outbox (warning_id);
CREATE INDEX ix_outbox_state_due_at ON outbox (state, due_at);
CREATE INDEX ix_unread_reply_phone ON unread_reply (phone);
CREATE INDEX ix_unread_reply_farmer_id ON unread_reply (farmer_id);
CREATE INDEX ix_nursery_event_nursery_id ON nursery_event (nursery_id);
CREATE INDEX ix_outbox_state_lane_due_at_id ON outbox (state, lane, due_at, id);
CREATE INDEX ix_reminder_state_due_at ON reminder (state, due_at);
CREATE INDEX ix_reminder_answer_day ON reminder (answer, day);
CREATE INDEX ix_reminder_nursery_id_state_due_at ON reminder (nursery_id, state, due_at);
CREATE INDEX ix_reminder_message_id ON reminder (message_id);
CREATE INDEX ix_reminder_to_come ON reminder (due_at, nursery_id) WHERE state = 'planned' AND rests IS 0;
CREATE INDEX ix_reminder_asked ON reminder (task, due_at) WHERE state = 'sent' AND rests IS 0;
CREATE INDEX ix_part_line_part ON part (line, part);
CREATE INDEX ix_part_message_id ON part (message_id);
CREATE INDEX ix_part_at ON part (at);
CREATE INDEX ix_piece_kept_at ON piece (kept_at);
CREATE INDEX ix_web_session_officer_id ON web_session (officer_id);
CREATE INDEX ix_known_browser_officer_id ON known_browser (officer_id);
CREATE INDEX ix_desk_mark_kind_farmer_id ON desk_mark (kind, farmer_id);
CREATE INDEX ix_desk_mark_farmer_id ON desk_mark (farmer_id);
CREATE INDEX ix_desk_deed_officer_id_at ON desk_deed (officer_id, at);
