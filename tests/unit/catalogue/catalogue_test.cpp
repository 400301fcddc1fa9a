#include <catch2/catch.hpp>

#include <fstream>

#include <nlohmann/json.hpp>

#include "core/catalogue/catalogue.h"

using namespace hither;
namespace fs = std::filesystem;

namespace {

/// A folder of part files that goes away with the test.
struct Folder {
    explicit Folder(const std::string& name) : path(fs::temp_directory_path() / ("hither catalogue test " + name)) {
        fs::remove_all(path);
        fs::create_directories(path);
    }
    ~Folder() { std::error_code ignored; fs::remove_all(path, ignored); }
    void write(const std::string& file, const std::string& text) const { std::ofstream(path / file) << text; }
    fs::path path;
};

nlohmann::json plate(const std::string& id, const std::string& name) {
    return {{"id", id}, {"name", name}, {"kind", "adapter"},
            {"bases", {{{"interface", "UNC 1/4-20"}, {"gender", "female"}}}}, {"outlet", {{"interface", "UNC 3/8-16"}, {"gender", "male"}}}};
}
std::string names(const Catalogue& catalogue) {
    std::string text;
    for (const auto& part : catalogue.parts()) text += (text.empty() ? "" : ", ") + part->name;
    return text;
}

}  // namespace

TEST_CASE("a folder's files are read in name order, single parts and lists", "[catalogue]") {
    const Folder folder("order");
    folder.write("b.json", plate("second", "Second").dump());
    folder.write("a.json", nlohmann::json::array({plate("first-1", "First"), plate("first-2", "After")}).dump());
    folder.write("notes.txt", "not a part");
    Catalogue catalogue;
    CHECK(catalogue.addFolder(folder.path).empty());
    CHECK(names(catalogue) == "First, After, Second");
    REQUIRE(catalogue.find("second"));
    CHECK(catalogue.find("second")->name == "Second");
    CHECK(catalogue.find("third") == nullptr);
    CHECK(catalogue.addFolder(folder.path / "missing").empty());
}

TEST_CASE("a person's own part takes the place of the shipped one with its id", "[catalogue]") {
    const Folder shipped("shipped"), own("own");
    shipped.write("a.json", nlohmann::json::array({plate("x", "Shipped x"), plate("y", "Shipped y")}).dump());
    own.write("a.json", nlohmann::json::array({plate("x", "Own x"), plate("z", "Own z")}).dump());
    Catalogue catalogue;
    CHECK(catalogue.addFolder(shipped.path).empty());
    const std::shared_ptr<const Part> before = catalogue.parts().front();
    CHECK(catalogue.addFolder(own.path).empty());
    CHECK(names(catalogue) == "Own x, Shipped y, Own z");
    CHECK(catalogue.find("x")->name == "Own x");
    CHECK(before->name == "Shipped x");  // whoever holds the old one keeps it
}

TEST_CASE("what cannot be read is a problem that names its file, the rest still loads", "[catalogue]") {
    const Folder folder("problems");
    nlohmann::json wrong = plate("wrong", "Wrong");
    wrong["kind"] = "thing";
    folder.write("1 broken.json", "[{\"id\": ");
    folder.write("2 mixed.json", nlohmann::json::array({plate("good", "Good"), wrong, 3}).dump());
    folder.write("3 twice.json", plate("good", "Good again").dump());
    fs::create_directory(folder.path / "4 folder.json");
    Catalogue catalogue;
    const auto problems = catalogue.addFolder(folder.path);
    CHECK(names(catalogue) == "Good");
    REQUIRE(problems.size() == 5);
    CHECK(problems[0].file == (folder.path / "1 broken.json").string());
    CHECK(problems[0].found.rfind("line 1, column 9: not JSON", 0) == 0);
    CHECK(problems[1].part == "wrong");
    CHECK(problems[1].key == "kind");
    CHECK(problems[2].part == "number 3");
    CHECK(problems[3].part == "good");
    CHECK(problems[3].found == "an id that stands twice in this folder");
    CHECK(problems[4].found == "not a file with text");
}
