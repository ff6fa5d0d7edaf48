import QtQuick
import QtTest
import Kneerail.Ui

Item {
    id: root

    width: 400
    height: 200

    ReadingSlot {
        id: slot

        text: "74"
        ghost: "88"
        Accessible.name: "Coating reading 1 of 5, 74, last visit 88"
    }

    LabelledStrip {
        id: strip

        y: 100
        width: 300
        height: 66
        limit: 35
        last: [88, 84, 86, 90, 85]
    }

    TestCase {
        name: "ReadingSlot"
        when: windowShown

        function cleanup() {
            slot.current = false;
            slot.kept = false;
            slot.lookAgain = false;
            slot.notKept = false;
        }

        function test_a_number_is_dashed_until_it_is_on_the_disk() {
            verify(slot.background.dashed);
            slot.kept = true;
            verify(!slot.background.dashed);
        }

        function test_the_slot_that_waits_has_a_chalk_edge() {
            slot.current = true;
            verify(Qt.colorEqual(slot.background.edge, Tokens.chalk));
        }

        function test_a_far_reading_and_one_not_kept_have_a_double_edge() {
            slot.kept = true;
            verify(!slot.background.doubleEdge);
            slot.lookAgain = true;
            verify(slot.background.doubleEdge);
            slot.lookAgain = false;
            slot.notKept = true;
            verify(slot.background.doubleEdge);
        }

        function test_the_scale_of_the_strip_takes_every_reading_in() {
            const item = findChild(strip, "strip");
            compare(item.scaleEnd, 120);
            strip.today = [74, 310];
            verify(item.scaleEnd >= 310);
            strip.today = [];
            compare(item.scaleEnd, 120);
        }
    }
}
