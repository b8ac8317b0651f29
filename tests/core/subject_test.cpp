// What an entry is about, from its path.
#include "core/journal/subject.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace bullace::journal;

TEST_CASE("an observation names its vine, its date and its descriptor, and its sample") {
    const Subject one = readSubject("obs/B2-07-14a/2026-05-12/stage");
    CHECK(one.form == SubjectForm::Observation);
    CHECK(one.id == "B2-07-14a");
    REQUIRE(one.position);
    CHECK(one.position->block == "B2");
    CHECK(one.position->row == 7);
    CHECK(one.position->vine == 14);
    CHECK(one.position->letter == 'a');
    CHECK(one.date == "2026-05-12");
    CHECK(one.descriptor == "stage");
    CHECK(one.sample.empty());
    CHECK_FALSE(one.isLot());

    const Subject sample = readSubject("obs/lot:L26-3/2026-09-12/ph/t00c5a91be2f0417d.1,12");
    CHECK(sample.form == SubjectForm::Observation);
    CHECK(sample.isLot());
    CHECK(sample.id == "lot:L26-3");
    CHECK(sample.sample == "t00c5a91be2f0417d.1,12");
}

TEST_CASE("every other form of subject is known by its first word") {
    const struct {
        const char* text;
        SubjectForm form;
        const char* id;
        const char* field;
    } forms[] = {
        {"planting/B2-07-14/2021-03-02", SubjectForm::Planting, "B2-07-14", ""},
        {"accession/W-17/title", SubjectForm::Accession, "W-17", "title"},
        {"lot/00c5a9-3/from", SubjectForm::Lot, "00c5a9-3", "from"},
        {"cross/26-04/mother", SubjectForm::Cross, "26-04", "mother"},
        {"person/mk/title", SubjectForm::Person, "mk", "title"},
        {"round/bloom-1/rows", SubjectForm::Round, "bloom-1", "rows"},
        {"block/B2/closed-until", SubjectForm::Block, "B2", "closed-until"},
        {"block/B2/renumber-2026-02-01", SubjectForm::Block, "B2", "renumber-2026-02-01"},
        {"descriptor/bunch-rot/rule", SubjectForm::Descriptor, "bunch-rot", "rule"},
        {"rulebook/10", SubjectForm::Rulebook, "10", ""},
        {"weather/mast/2026-05-12/tmin", SubjectForm::Weather, "mast", "tmin"},
    };
    for (const auto& [text, form, id, field] : forms) {
        CAPTURE(text);
        const Subject subject = readSubject(text);
        CHECK(subject.form == form);
        CHECK(subject.id == id);
        CHECK(subject.field == field);
    }
}

TEST_CASE("a subject that fits no line is kept as unknown") {
    for (const char* text : {
             "",
             "/",
             "obs",
             "obs/",
             "obs/B2-07-14/2026-05-12",
             "obs/B2-07-14/2026-05-12/",
             "obs//2026-05-12/stage",
             "obs/B2-7-14/2026-05-12/stage",   // row not padded
             "obs/B2-007-14/2026-05-12/stage", // row padded too far
             "obs/2B-07-14/2026-05-12/stage",  // a block begins with a letter
             "obs/B2-07/2026-05-12/stage",
             "obs/B2-07-14ab/2026-05-12/stage",
             "obs/lot:/2026-05-12/stage",
             "obs/B2-07-14/2026-02-30/stage",   // no such day
             "obs/B2-07-14/2026-05-12/stage/1", // a sample is origin,n
             "obs/B2-07-14/2026-05-12/stage/t00c5a91be2f0417d.1,0",
             "obs/B2-07-14/2026-05-12/stage/t00c5a91be2f0417d.1,01",
             "obs/B2-07-14/2026-05-12/stage/t00c5a91be2f0417d.1,1/x",
             "Obs/B2-07-14/2026-05-12/stage",
             "planting/B2-07-14",
             "planting/lot:1/2026-05-12",
             "planting/B2-07-14/2026-05-12/x",
             "accession/W-17",
             "accession/W-17/title/x",
             "block/2B/title",
             "block/B2/renumber-2026-13-01",
             "rulebook/01",
             "rulebook/-1",
             "rulebook/x",
             "rulebook/1/x",
             "weather/mast/2026-05-12",
             "weather/mast/12.5.2026/tmin",
             "mood/B2-07-14/good",
         }) {
        CAPTURE(text);
        CHECK(readSubject(text).form == SubjectForm::Unknown);
    }
}

TEST_CASE(
    "everything below obs/ goes by the rights of observations, whether it can be read or not") {
    CHECK(isBelowObs("obs/B2-07-14/2026-05-12/stage"));
    CHECK(isBelowObs("obs/somewhere"));
    CHECK_FALSE(isBelowObs("obs"));
    CHECK_FALSE(isBelowObs("observation/x"));
}
