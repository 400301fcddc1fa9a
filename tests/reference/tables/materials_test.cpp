#include <catch2/catch.hpp>

#include <cstdio>

#include "core/catalogue/materials.h"

using namespace hither;

namespace {

MaterialTable table() {
    std::vector<std::string> problems;
    MaterialTable read = readMaterials(std::filesystem::path(HITHER_SOURCE_DIR) / "resources/materials/materials.json", problems);
    for (const std::string& problem : problems) FAIL_CHECK(problem);
    return read;
}

}  // namespace

TEST_CASE("elastic moduli are those of the named tables", "[tables][materials]") {
    const MaterialTable materials = table();
    struct Row { const char* key; double least_GPa, greatest_GPa; const char* source; };
    for (const Row& row : {Row{"aluminium-6061", 69, 69, "Philpot 2017, Table D.1b"},
                           Row{"aluminium-6061", 68.9, 69.1, "10.0e6 psi = 68.95 GPa, ecoursesbook.com material appendix, rounded"},
                           Row{"aluminium-cast", 70, 79, "Gere, aluminium alloys"},
                           Row{"steel-a36", 200, 207, "Philpot 200, Callister Table B.2 207"},
                           Row{"steel", 190, 212, "Gere 190 to 210, Dowling Table 5.2 212"},
                           Row{"stainless-304", 193, 193, "Callister Table B.2"},
                           Row{"brass", 96, 110, "Gere"},
                           Row{"abs", 2.4, 2.4, "Dowling Table 5.2, medium impact"},
                           Row{"pla", 3, 4, "PMC10113796 Table 6"},
                           Row{"petg", 2.01, 2.11, "PMC10113796 Table 6"},
                           Row{"nylon-66", 2.7, 2.7, "Dowling Table 5.2, dry"},
                           Row{"nylon-66", 1.59, 3.79, "Callister Table B.2"},
                           Row{"polycarbonate", 2.38, 2.38, "Callister Table B.2"},
                           Row{"pvc", 2.41, 4.14, "Callister Table B.2"}}) {
        INFO(row.key << ": " << row.source);
        const Material* found = materials.find(row.key);
        REQUIRE(found);
        CHECK(found->E_Pa >= row.least_GPa * 1e9 * (1 - 1e-12));
        CHECK(found->E_Pa <= row.greatest_GPa * 1e9 * (1 + 1e-12));
    }
}

TEST_CASE("strengths and shear moduli that a table gives are that table's", "[tables][materials]") {
    const MaterialTable materials = table();
    // Philpot 2017, Table D.1b
    CHECK(materials.find("aluminium-6061")->yield_Pa == Approx(276e6));
    CHECK(materials.find("aluminium-6061")->G_Pa == Approx(26e9));
    CHECK(materials.find("steel-a36")->yield_Pa == Approx(250e6));
    // Gere: steel 75 to 80 GPa, aluminium 26 to 30 GPa
    for (const char* key : {"steel", "steel-a36"}) {
        CHECK(materials.find(key)->G_Pa >= 75e9);
        CHECK(materials.find(key)->G_Pa <= 80e9);
    }
    CHECK(materials.find("aluminium-cast")->G_Pa >= 26e9);
    CHECK(materials.find("aluminium-cast")->G_Pa <= 30e9);
    // PMC10113796 Table 6: printed PLA, tensile 50 to 89 MPa
    CHECK(materials.find("pla")->yield_Pa >= 50e6);
    CHECK(materials.find("pla")->yield_Pa <= 89e6);
}

TEST_CASE("every material's moduli fit an isotropic solid and its row names a source", "[tables][materials]") {
    // E = 2 G (1 + nu) with Poisson's ratio of solid metals and plastics between 0.25 and 0.5 (from memory).
    const MaterialTable materials = table();
    for (const auto& [key, row] : materials.rows) {
        INFO(key);
        CHECK(row.key == key);
        CHECK(row.source.size() > 10);
        if (row.G_Pa == 0) continue;
        const double nu = row.E_Pa / (2 * row.G_Pa) - 1;
        CHECK(nu > 0.25);
        CHECK(nu < 0.5);
    }
}

TEST_CASE("a wrong row of a material file is left out and said", "[tables][materials]") {
    const auto file = std::filesystem::temp_directory_path() / "hither materials test.json";
    FILE* out = std::fopen(file.c_str(), "w");
    REQUIRE(out);
    std::fputs(R"([{"key":"good","name":"Good","E_GPa":1,"yield_MPa":2,"source":"invented for this test"},
                   {"key":"bad","name":"Bad","E_GPa":-1,"yield_MPa":2,"source":"invented"},
                   {"key":"good","name":"Again","E_GPa":1,"yield_MPa":2,"source":"invented"}])", out);
    std::fclose(out);
    std::vector<std::string> problems;
    const MaterialTable read = readMaterials(file, problems);
    std::filesystem::remove(file);
    CHECK(read.rows.size() == 1);
    REQUIRE(read.find("good"));
    CHECK(read.find("good")->name == "Good");
    CHECK(read.find("good")->G_Pa == 0);
    CHECK(read.find("bad") == nullptr);
    REQUIRE(problems.size() == 2);
    CHECK(problems[0].find("1/E_GPa: found -1") != std::string::npos);
    CHECK(problems[1].find("for the second time") != std::string::npos);
    CHECK(readMaterials("/no/such/file.json", problems).rows.empty());
    CHECK(problems.size() == 3);
}
