import QtQuick
import QtTest
import Kneerail.Ui

Item {
    id: root

    width: 400
    height: 200

    LabelledTorqueScale {
        id: scale

        width: 368
        height: 96
        target: 24
        lowest: 14
        value: -1
    }

    SignalSpy {
        id: settled

        target: scale
        signalName: "settled"
    }

    TestCase {
        name: "LabelledTorqueScale"
        when: windowShown

        function init() {
            scale.value = -1;
            settled.clear();
        }

        function test_there_is_no_mark_until_a_finger_puts_one() {
            compare(scale.value, -1);
            compare(scale.Accessible.name, "About where it moved, no mark yet");
            const touch = touchEvent(scale);
            touch.press(0, scale, 184, 50).commit();
            compare(scale.value, 12);
            touch.release(0, scale, 184, 50).commit();
            compare(settled.count, 1);
            compare(settled.signalArguments[0][0], 12);
            compare(scale.Accessible.name, "About where it moved, 12 N·m");
        }

        function test_it_slides_in_whole_newton_metres_and_stops_at_the_ends() {
            mousePress(scale, 184, 50);
            mouseMove(scale, 600, 50);
            compare(scale.value, 24);
            mouseMove(scale, -50, 50);
            compare(scale.value, 0);
            mouseRelease(scale, 30, 50);
            compare(settled.count, 1);
        }

        function test_arrows_step_it() {
            scale.forceActiveFocus();
            keyClick(Qt.Key_Right);
            compare(scale.value, 12);
            keyClick(Qt.Key_Right);
            compare(scale.value, 13);
            keyClick(Qt.Key_Left);
            keyClick(Qt.Key_Left);
            compare(scale.value, 11);
        }
    }
}
