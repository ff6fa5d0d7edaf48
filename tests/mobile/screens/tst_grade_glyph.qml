import QtQuick
import QtTest
import Kneerail.Ui

Rectangle {
    id: root

    width: 120
    height: 120
    color: Tokens.paper

    GradeGlyph {
        id: glyph

        anchors.centerIn: parent
        radius: Tokens.glyphOnKey
    }

    TestCase {
        name: "GradeGlyph"
        when: windowShown

        function ink(): int {
            const picture = grabImage(root);
            let inked = 0;
            for (let y = 0; y < picture.height; ++y) {
                for (let x = 0; x < picture.width; ++x)
                    inked += picture.green(x, y) < 160 ? 1 : 0;
            }
            return inked;
        }

        function test_the_worse_the_grade_the_less_ink() {
            glyph.grade = 1;
            let before = ink();
            verify(before > 1000);
            for (let grade = 2; grade <= 5; ++grade) {
                glyph.grade = grade;
                const now = ink();
                verify(now < before, "grade " + grade + ": " + now + " after " + before);
                before = now;
            }
        }

        function test_last_visit_stands_in_the_open_ring() {
            glyph.grade = 0;
            glyph.lastTime = 0;
            const open = ink();
            verify(open > 50);
            glyph.lastTime = 2;
            verify(ink() > open + 200);
        }

        function test_it_has_the_size_of_its_ground() {
            verify(glyph.implicitWidth > 2 * glyph.radius);
            compare(glyph.implicitWidth, glyph.implicitHeight);
        }

        function test_an_ink_of_its_own_is_used() {
            glyph.grade = 1;
            glyph.ink = "#ffffff";
            verify(ink() < 20);
            glyph.ink = "transparent";
            verify(ink() > 1000);
        }
    }
}
