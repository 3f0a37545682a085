--
-- PostgreSQL database dump
--


-- Dumped from database version 15.18 (Debian 15.18-0+deb12u1)
-- Dumped by pg_dump version 15.18 (Debian 15.18-0+deb12u1)


--
-- Name: vaporwright; Type: SCHEMA; Schema: -; Owner: -
--

CREATE SCHEMA vaporwright;




--
-- Name: counters; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.counters (
    name text NOT NULL,
    value integer NOT NULL
);


--
-- Name: files; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.files (
    sha256 text NOT NULL,
    bytes bigint NOT NULL,
    kept_at timestamp(3) with time zone NOT NULL,
    CONSTRAINT files_sha256_check CHECK ((sha256 ~ '^[0-9a-f]{64}$'::text))
);


--
-- Name: findings; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.findings (
    id uuid NOT NULL,
    job_id uuid NOT NULL,
    "position" integer NOT NULL,
    made_at timestamp(3) with time zone NOT NULL,
    inputs_sha256 text NOT NULL,
    program text NOT NULL,
    sheet json NOT NULL
);


--
-- Name: hand_overs; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.hand_overs (
    id uuid NOT NULL,
    job_id uuid NOT NULL,
    "position" integer NOT NULL,
    made_at timestamp(3) with time zone NOT NULL,
    made_by text NOT NULL,
    pdf_sha256 text NOT NULL,
    language text NOT NULL
);


--
-- Name: history; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.history (
    job_id uuid NOT NULL,
    version integer NOT NULL,
    at timestamp(3) with time zone NOT NULL,
    made_by text NOT NULL,
    user_id uuid,
    what text NOT NULL,
    section text,
    before json,
    after json,
    undoes integer
);


--
-- Name: job_files; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.job_files (
    job_id uuid NOT NULL,
    sha256 text NOT NULL
);


--
-- Name: job_sections; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.job_sections (
    job_id uuid NOT NULL,
    section text NOT NULL,
    value json NOT NULL
);


--
-- Name: jobs; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.jobs (
    id uuid NOT NULL,
    number integer NOT NULL,
    version integer NOT NULL,
    created_at timestamp(3) with time zone NOT NULL,
    changed_at timestamp(3) with time zone NOT NULL,
    demo boolean NOT NULL,
    closed boolean NOT NULL,
    vehicle text NOT NULL,
    registration text,
    complaint text NOT NULL,
    codes text[] NOT NULL,
    search text NOT NULL,
    waits_for text NOT NULL,
    finding_verdict text,
    finding_cause text,
    finding_probability double precision,
    finding_program text
);


--
-- Name: schema_versions; Type: TABLE; Schema: vaporwright; Owner: -
--

CREATE TABLE vaporwright.schema_versions (
    version integer NOT NULL,
    name text NOT NULL,
    applied_at timestamp(3) with time zone NOT NULL
);


--
-- Data for Name: counters; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.counters VALUES ('job', 4);


--
-- Data for Name: files; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.files VALUES ('492d5ea496056f1a6a6592241032fab764c321596317930b4fa0e1e8bc3b7470', 8, '2026-03-01 08:30:02+00');
INSERT INTO vaporwright.files VALUES ('86edbaa24831badfa0a8b04bb410141e2ee4182b6d0014493fe262a7a331c20b', 8, '2026-03-01 08:30:10+00');


--
-- Data for Name: findings; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.findings VALUES ('b2a80709-0c74-40c3-917f-d9d771d7a9bd', '76e6b896-bc26-4884-af00-4f73721cdff1', 0, '2026-03-01 08:30:00+00', '18247c6ae97cafc5f46754249727f76cbaef04cc139d962214bd83f8ae22e80a', 'vaporwright 0.0.0-test', '{"schema":"vaporwright-finding-1","program":"vaporwright 0.0.0-test","madeAt":"2026-03-04T09:12:00.000Z","car":{"schema":"vaporwright-car-1","label":"Blue estate <invented> no. 7","layout":"engine-vacuum","filler":"capped","tankVolumeM3":0.062,"canisterFreeVolumeM3":0.0026,"pressureSensor":{"minGaugePa":-3700,"maxGaugePa":1300},"fuel":{"reidVapourPressurePa":{"low":50000,"high":62000}},"demo":true},"carSha256":"c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0c0","complaint":"lamp on, drives fine","codes":["P0456"],"recordings":[{"label":"self-test.csv","sha256":"5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a5a","samples":561,"durationS":112,"procedure":"vacuum-draw","phases":[{"kind":"baseline","fromS":0,"toS":12},{"kind":"draw","fromS":12,"toS":26},{"kind":"settle","fromS":26,"toS":30},{"kind":"hold","fromS":30,"toS":96},{"kind":"release","fromS":96,"toS":112}],"quality":["5 samples per second, none missing","tank pressure: steps of 12 Pa"],"warnings":["1 line left out (first: line 40): it is empty"],"conditions":{"fuelLevel":0.41,"ambientTemperatureK":291.15,"barometricPa":100900},"commands":{"timeS":[0,11,12,26,96,112],"purgeDuty":[0,0,0.6,0,0,0],"ventClosed":[0,1,1,1,0,0]}}],"finding":{"verdict":"fault","procedures":["vacuum-draw"],"causes":[{"id":"leak","probability":0.912,"places":[{"group":["cap and neck","tank top","vapour line"],"probability":0.8},{"group":["canister","vent side"],"probability":0.112}],"diameterMm":{"median":0.62,"lo90":0.56,"hi90":0.69},"relativeLogEvidence":0,"byPhase":[{"recording":0,"phase":"baseline","logEvidence":0.1},{"recording":0,"phase":"draw","logEvidence":1.4},{"recording":0,"phase":"hold","logEvidence":38.2},{"recording":0,"phase":"release","logEvidence":-0.7}]},{"id":"vent_leak","probability":0.067,"places":[{"group":["vent valve"],"probability":0.067}],"diameterMm":{"median":0.63,"lo90":0.55,"hi90":0.72},"relativeLogEvidence":-2.1,"byPhase":[]},{"id":"sensor_gain","probability":0.014,"places":[{"group":["pressure sensor"],"probability":0.014}],"relativeLogEvidence":-4.4,"byPhase":[]},{"id":"none","probability":0.004,"places":[],"diameterMm":{"median":0.05,"lo90":0.01,"hi90":0.11},"relativeLogEvidence":-38,"byPhase":[]},{"id":"purge_leak","probability":0.003,"places":[{"group":["purge valve"],"probability":0.003}],"relativeLogEvidence":-41,"byPhase":[]}],"pairs":[],"diameterMm":{"median":0.62,"lo90":0.56,"hi90":0.69},"exceeds":{"mm0_5":0.994,"mm1_0":0.0004},"reasons":[{"kind":"for","text":"During the hold the vacuum is lost faster than evaporation alone can explain."},{"kind":"against","text":"The release is a little slower than the model expects."},{"kind":"limits","text":"The fuel temperature was not recorded; the size allows for 10 to 35 °C."},{"kind":"next-recording","text":"The same test with the purge line clamped tells the purge side from the tank side."}],"warnings":["The level sensor moved by 3 % during the hold."],"overlays":[]}}');


--
-- Data for Name: hand_overs; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.hand_overs VALUES ('3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b333', '76e6b896-bc26-4884-af00-4f73721cdff1', 0, '2026-03-01 08:30:00+00', 'Anna', '86edbaa24831badfa0a8b04bb410141e2ee4182b6d0014493fe262a7a331c20b', 'de');


--
-- Data for Name: history; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.history VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 1, '2026-03-01 08:30:01+00', 'Anna', NULL, 'created', NULL, NULL, '{"complaint":{"words":"Odd \u0000 \ud800 \"\\\" text","types":["smell"]},"codes":[{"code":"P0442","status":"stored","freezeFrame":[{"name":"load","value":"12.5","unit":"%"}]}],"car":{"schema":"vaporwright-car-1","label":"Blue estate <invented> no. 7","layout":"engine-vacuum","filler":"capped","tankVolumeM3":0.062,"canisterFreeVolumeM3":0.0026,"pressureSensor":{"minGaugePa":-3700,"maxGaugePa":1300},"fuel":{"reidVapourPressurePa":{"low":50000,"high":62000}},"demo":true},"recordings":[{"id":"984fc70c-dc6b-4d23-9dd3-0fbc65120c02","label":"idle test","fileName":"idle test.csv","sha256":"492d5ea496056f1a6a6592241032fab764c321596317930b4fa0e1e8bc3b7470","bytes":8,"receivedAt":"2026-03-01T08:30:00.000Z","useInFinding":true,"taken":"before-repair"}]}', NULL);
INSERT INTO vaporwright.history VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 2, '2026-03-01 08:30:03+00', 'Anna', NULL, 'finding', 'findings', NULL, '{"id":"b2a80709-0c74-40c3-917f-d9d771d7a9bd","inputsSha256":"18247c6ae97cafc5f46754249727f76cbaef04cc139d962214bd83f8ae22e80a","program":"vaporwright 0.0.0-test","verdict":"fault","cause":"leak","probability":0.912}', NULL);
INSERT INTO vaporwright.history VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 3, '2026-03-01 08:30:04+00', 'Bert', NULL, 'changed', 'vehicle', '{"name":""}', '{"name":"Blue","odometerKm":123456.7}', NULL);
INSERT INTO vaporwright.history VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 4, '2026-03-01 08:30:06+00', 'Bert', NULL, 'changed', 'checks', '[]', '[{"id":"3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b111","at":"2026-03-01T08:30:00.000Z","by":"Anna","what":"Clamped the purge line at the valve","result":"The vacuum held after the clamp","measured":{"value":1.25,"unit":"kPa"},"speaksFor":["purge_leak"],"speaksAgainst":["leak","vent_leak"],"strength":"clear"}]', NULL);
INSERT INTO vaporwright.history VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 5, '2026-03-01 08:30:08+00', 'Anna', NULL, 'undone', 'checks', '[{"id":"3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b111","at":"2026-03-01T08:30:00.000Z","by":"Anna","what":"Clamped the purge line at the valve","result":"The vacuum held after the clamp","measured":{"value":1.25,"unit":"kPa"},"speaksFor":["purge_leak"],"speaksAgainst":["leak","vent_leak"],"strength":"clear"}]', '[]', 4);
INSERT INTO vaporwright.history VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 6, '2026-03-01 08:30:09+00', 'Anna', NULL, 'hand-over', 'handOvers', NULL, '{"id":"3f0e6a52-2f7c-4a1f-8d8e-0f9f53a0b333","madeAt":"2026-03-01T08:30:00.000Z","by":"Anna","pdfSha256":"86edbaa24831badfa0a8b04bb410141e2ee4182b6d0014493fe262a7a331c20b","language":"de"}', NULL);
INSERT INTO vaporwright.history VALUES ('af034b86-1d22-4631-a5d5-c023fce32ca2', 1, '2026-03-01 08:30:11+00', 'Anna', NULL, 'created', NULL, NULL, '{"vehicle":{"name":"car 0"}}', NULL);
INSERT INTO vaporwright.history VALUES ('accb068d-aeb0-460e-b147-106f99bd923d', 1, '2026-03-01 08:30:12+00', 'Anna', NULL, 'created', NULL, NULL, '{"vehicle":{"name":"car 1"}}', NULL);
INSERT INTO vaporwright.history VALUES ('f39fdc16-cff3-4f4d-a52a-38405d9a430e', 1, '2026-03-01 08:30:13+00', 'Anna', NULL, 'created', NULL, NULL, '{"vehicle":{"name":"car 2"}}', NULL);


--
-- Data for Name: job_files; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.job_files VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', '492d5ea496056f1a6a6592241032fab764c321596317930b4fa0e1e8bc3b7470');
INSERT INTO vaporwright.job_files VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', '86edbaa24831badfa0a8b04bb410141e2ee4182b6d0014493fe262a7a331c20b');


--
-- Data for Name: job_sections; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.job_sections VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 'complaint', '{"words":"Odd \u0000 \ud800 \"\\\" text","types":["smell"]}');
INSERT INTO vaporwright.job_sections VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 'codes', '[{"code":"P0442","status":"stored","freezeFrame":[{"name":"load","value":"12.5","unit":"%"}]}]');
INSERT INTO vaporwright.job_sections VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 'car', '{"schema":"vaporwright-car-1","label":"Blue estate <invented> no. 7","layout":"engine-vacuum","filler":"capped","tankVolumeM3":0.062,"canisterFreeVolumeM3":0.0026,"pressureSensor":{"minGaugePa":-3700,"maxGaugePa":1300},"fuel":{"reidVapourPressurePa":{"low":50000,"high":62000}},"demo":true}');
INSERT INTO vaporwright.job_sections VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 'recordings', '[{"id":"984fc70c-dc6b-4d23-9dd3-0fbc65120c02","label":"idle test","fileName":"idle test.csv","sha256":"492d5ea496056f1a6a6592241032fab764c321596317930b4fa0e1e8bc3b7470","bytes":8,"receivedAt":"2026-03-01T08:30:00.000Z","useInFinding":true,"taken":"before-repair"}]');
INSERT INTO vaporwright.job_sections VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 'vehicle', '{"name":"Blue","odometerKm":123456.7}');
INSERT INTO vaporwright.job_sections VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 'checks', '[]');
INSERT INTO vaporwright.job_sections VALUES ('af034b86-1d22-4631-a5d5-c023fce32ca2', 'vehicle', '{"name":"car 0"}');
INSERT INTO vaporwright.job_sections VALUES ('accb068d-aeb0-460e-b147-106f99bd923d', 'vehicle', '{"name":"car 1"}');
INSERT INTO vaporwright.job_sections VALUES ('f39fdc16-cff3-4f4d-a52a-38405d9a430e', 'vehicle', '{"name":"car 2"}');


--
-- Data for Name: jobs; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.jobs VALUES ('76e6b896-bc26-4884-af00-4f73721cdff1', 1, 6, '2026-03-01 08:30:01+00', '2026-03-01 08:30:09+00', false, false, 'Blue', NULL, 'Odd  � "\" text', '{P0442}', '1
blue
odd  � "\" text
p0442', 'check', 'fault', 'leak', 0.912, 'vaporwright 0.0.0-test');
INSERT INTO vaporwright.jobs VALUES ('af034b86-1d22-4631-a5d5-c023fce32ca2', 2, 1, '2026-03-01 08:30:11+00', '2026-03-01 08:30:11+00', true, false, 'car 0', NULL, '', '{}', '2
car 0
', 'complaint', NULL, NULL, NULL, NULL);
INSERT INTO vaporwright.jobs VALUES ('accb068d-aeb0-460e-b147-106f99bd923d', 3, 1, '2026-03-01 08:30:12+00', '2026-03-01 08:30:12+00', false, false, 'car 1', NULL, '', '{}', '3
car 1
', 'complaint', NULL, NULL, NULL, NULL);
INSERT INTO vaporwright.jobs VALUES ('f39fdc16-cff3-4f4d-a52a-38405d9a430e', 4, 1, '2026-03-01 08:30:13+00', '2026-03-01 08:30:13+00', false, false, 'car 2', NULL, '', '{}', '4
car 2
', 'complaint', NULL, NULL, NULL, NULL);


--
-- Data for Name: schema_versions; Type: TABLE DATA; Schema: vaporwright; Owner: -
--

INSERT INTO vaporwright.schema_versions VALUES (1, 'jobs', '2026-03-01 08:30:00+00');


--
-- Name: counters counters_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.counters
    ADD CONSTRAINT counters_pkey PRIMARY KEY (name);


--
-- Name: files files_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.files
    ADD CONSTRAINT files_pkey PRIMARY KEY (sha256);


--
-- Name: findings findings_job_id_position_key; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.findings
    ADD CONSTRAINT findings_job_id_position_key UNIQUE (job_id, "position");


--
-- Name: findings findings_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.findings
    ADD CONSTRAINT findings_pkey PRIMARY KEY (id);


--
-- Name: hand_overs hand_overs_job_id_position_key; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.hand_overs
    ADD CONSTRAINT hand_overs_job_id_position_key UNIQUE (job_id, "position");


--
-- Name: hand_overs hand_overs_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.hand_overs
    ADD CONSTRAINT hand_overs_pkey PRIMARY KEY (id);


--
-- Name: history history_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.history
    ADD CONSTRAINT history_pkey PRIMARY KEY (job_id, version);


--
-- Name: job_files job_files_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.job_files
    ADD CONSTRAINT job_files_pkey PRIMARY KEY (job_id, sha256);


--
-- Name: job_sections job_sections_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.job_sections
    ADD CONSTRAINT job_sections_pkey PRIMARY KEY (job_id, section);


--
-- Name: jobs jobs_number_key; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.jobs
    ADD CONSTRAINT jobs_number_key UNIQUE (number);


--
-- Name: jobs jobs_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.jobs
    ADD CONSTRAINT jobs_pkey PRIMARY KEY (id);


--
-- Name: schema_versions schema_versions_pkey; Type: CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.schema_versions
    ADD CONSTRAINT schema_versions_pkey PRIMARY KEY (version);


--
-- Name: job_files_sha256; Type: INDEX; Schema: vaporwright; Owner: -
--

CREATE INDEX job_files_sha256 ON vaporwright.job_files USING btree (sha256);


--
-- Name: jobs_changed_at; Type: INDEX; Schema: vaporwright; Owner: -
--

CREATE INDEX jobs_changed_at ON vaporwright.jobs USING btree (changed_at DESC, id);


--
-- Name: jobs_demo; Type: INDEX; Schema: vaporwright; Owner: -
--

CREATE INDEX jobs_demo ON vaporwright.jobs USING btree (id) WHERE demo;


--
-- Name: findings findings_job_id_fkey; Type: FK CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.findings
    ADD CONSTRAINT findings_job_id_fkey FOREIGN KEY (job_id) REFERENCES vaporwright.jobs(id) ON DELETE CASCADE;


--
-- Name: hand_overs hand_overs_job_id_fkey; Type: FK CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.hand_overs
    ADD CONSTRAINT hand_overs_job_id_fkey FOREIGN KEY (job_id) REFERENCES vaporwright.jobs(id) ON DELETE CASCADE;


--
-- Name: history history_job_id_fkey; Type: FK CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.history
    ADD CONSTRAINT history_job_id_fkey FOREIGN KEY (job_id) REFERENCES vaporwright.jobs(id) ON DELETE CASCADE;


--
-- Name: job_files job_files_job_id_fkey; Type: FK CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.job_files
    ADD CONSTRAINT job_files_job_id_fkey FOREIGN KEY (job_id) REFERENCES vaporwright.jobs(id) ON DELETE CASCADE;


--
-- Name: job_files job_files_sha256_fkey; Type: FK CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.job_files
    ADD CONSTRAINT job_files_sha256_fkey FOREIGN KEY (sha256) REFERENCES vaporwright.files(sha256);


--
-- Name: job_sections job_sections_job_id_fkey; Type: FK CONSTRAINT; Schema: vaporwright; Owner: -
--

ALTER TABLE ONLY vaporwright.job_sections
    ADD CONSTRAINT job_sections_job_id_fkey FOREIGN KEY (job_id) REFERENCES vaporwright.jobs(id) ON DELETE CASCADE;


--
-- PostgreSQL database dump complete
--



