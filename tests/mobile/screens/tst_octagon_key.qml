import QtQuick
import QtTest
import Kneerail.Ui

Item {
    id: root

    width: 400
    height: 300

    OctagonKey {
        id: key

        x: 10
        y: 10
        width: 117
        height: 112
        text: "Seized"
        secondLine: "no turn"
    }

    OctagonKey {
        id: other

        x: 150
        y: 10
        width: 117
        height: 112
        text: "No screw"
    }

    SignalSpy {
        id: keySpy

        target: key
        signalName: "clicked"
    }

    SignalSpy {
        id: otherSpy

        target: other
        signalName: "clicked"
    }

    TestCase {
        name: "OctagonKey"
        when: windowShown

        function init() {
            keySpy.clear();
            otherSpy.clear();
        }

        function test_touch_down_changes_the_fill_at_once() {
            const before = key.background.fill.toString();
            const touch = touchEvent(key);
            touch.press(0, key, 50, 50).commit();
            verify(key.pressed);
            verify(key.background.fill.toString() !== before);
            touch.release(0, key, 50, 50).commit();
            compare(key.background.fill.toString(), before);
            compare(keySpy.count, 1);
        }

        function test_two_fingers_press_two_keys() {
            const touch = touchEvent(root);
            touch.press(0, key, 50, 50).press(1, other, 50, 50).commit();
            verify(key.pressed);
            verify(other.pressed);
            touch.release(0, key, 50, 50).release(1, other, 50, 50).commit();
            compare(keySpy.count, 1);
            compare(otherSpy.count, 1);
        }

        function test_ten_touches_at_once_count_as_ten() {
            for (let k = 0; k < 10; ++k) {
                const touch = touchEvent(key);
                touch.press(0, key, 40 + k, 50).commit();
                touch.release(0, key, 40 + k, 50).commit();
            }
            compare(keySpy.count, 10);
        }

        function test_a_finger_that_slides_off_takes_it_back() {
            const touch = touchEvent(root);
            touch.press(0, key, 50, 50).commit();
            touch.move(0, key, 50, 250).commit();
            touch.release(0, key, 50, 250).commit();
            compare(keySpy.count, 0);
        }

        function test_it_says_what_it_is() {
            compare(key.Accessible.role, Accessible.Button);
            compare(key.Accessible.name, "Seized, no turn");
            compare(other.Accessible.name, "No screw");
        }

        function test_a_keyboard_presses_it() {
            key.forceActiveFocus(Qt.TabFocusReason);
            verify(key.visualFocus);
            verify(key.background.focusRing);
            keyClick(Qt.Key_Space);
            compare(keySpy.count, 1);
        }

        function test_a_key_is_never_smaller_than_a_gloved_finger() {
            verify(key.implicitHeight >= Tokens.touchTarget);
            verify(key.implicitWidth >= Tokens.digitKeyWidth);
        }
    }
}
