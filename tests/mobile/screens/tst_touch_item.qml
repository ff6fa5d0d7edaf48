import QtQuick
import QtTest
import Kneerail.Ui

Item {
    id: root

    width: 400
    height: 300

    TouchItem {
        id: item

        x: 10
        y: 10
        width: 100
        height: 100
        activeFocusOnTab: true
    }

    // What a key takes does not reach what lies behind it.
    MouseArea {
        id: behind

        z: -1
        anchors.fill: parent
    }

    SignalSpy {
        id: clicks

        target: item
        signalName: "clicked"
    }

    SignalSpy {
        id: presses

        target: item
        signalName: "pressedChanged"
    }

    SignalSpy {
        id: behindClicks

        target: behind
        signalName: "clicked"
    }

    SignalSpy {
        id: behindTwice

        target: behind
        signalName: "doubleClicked"
    }

    Flickable {
        x: 200
        width: 100
        height: 200
        contentHeight: 600

        TouchItem {
            id: inList

            width: 100
            height: 100
        }
    }

    SignalSpy {
        id: listClicks

        target: inList
        signalName: "clicked"
    }

    TestCase {
        name: "TouchItem"
        when: windowShown

        function init() {
            item.enabled = true;
            item.visible = true;
            root.forceActiveFocus();
            clicks.clear();
            presses.clear();
            behindClicks.clear();
            behindTwice.clear();
        }

        function test_a_finger_that_comes_back_presses_again() {
            const touch = touchEvent(root);
            touch.press(0, item, 50, 50).commit();
            verify(item.pressed);
            touch.move(0, item, 50, 150).commit();
            tryCompare(item, "pressed", false);  // moves come with the next frame
            touch.move(0, item, 50, 90).commit();
            tryCompare(item, "pressed", true);
            touch.release(0, item, 50, 90).commit();
            verify(!item.pressed);
            compare(clicks.count, 1);
            compare(behindClicks.count, 0);
        }

        function test_a_finger_that_lifts_outside_presses_nothing() {
            const touch = touchEvent(root);
            touch.press(0, item, 50, 50).commit();
            touch.move(0, item, 50, 150).commit();
            touch.release(0, item, 50, 150).commit();
            compare(clicks.count, 0);
            touch.press(0, item, 50, 50).commit();
            touch.release(0, item, 50, 50).commit();
            compare(clicks.count, 1);
        }

        function test_a_list_that_is_dragged_takes_the_press() {
            const touch = touchEvent(root);
            touch.press(0, inList, 50, 80).commit();
            verify(inList.pressed);
            for (let y = 75; y >= 20; y -= 5)
                touch.move(0, inList, 50, y).commit();
            tryCompare(inList, "pressed", false);
            touch.release(0, root, 250, 20).commit();
            compare(listClicks.count, 0);
        }

        function test_a_second_finger_on_it_counts_for_nothing() {
            const touch = touchEvent(root);
            touch.press(0, item, 30, 50).commit();
            touch.stationary(0).press(1, item, 70, 50).commit();
            touch.stationary(0).release(1, item, 70, 50).commit();
            verify(item.pressed);
            compare(clicks.count, 0);
            touch.release(0, item, 30, 50).commit();
            compare(clicks.count, 1);
        }

        function test_a_press_ends_when_it_goes_data() {
            return [{
                    tag: "hidden",
                    property: "visible"
                }, {
                    tag: "disabled",
                    property: "enabled"
                }];
        }

        function test_a_press_ends_when_it_goes(data) {
            const touch = touchEvent(root);
            touch.press(0, item, 50, 50).commit();
            item[data.property] = false;
            verify(!item.pressed);
            item[data.property] = true;
            touch.release(0, item, 50, 50).commit();
            compare(clicks.count, 0);
            item.forceActiveFocus(Qt.TabFocusReason);
            keyPress(Qt.Key_Space);
            verify(item.pressed);
            item[data.property] = false;
            verify(!item.pressed);
            item[data.property] = true;
            keyRelease(Qt.Key_Space);
            compare(clicks.count, 0);
        }

        function test_disabled_it_is_not_pressed() {
            item.enabled = false;
            const touch = touchEvent(root);
            touch.press(0, item, 50, 50).commit();
            touch.release(0, item, 50, 50).commit();
            mouseClick(item, 50, 50);
            compare(presses.count, 0);
            compare(clicks.count, 0);
        }

        function test_a_mouse_presses_by_its_left_button() {
            mousePress(item, 50, 50);
            verify(item.pressed);
            mouseMove(item, 50, 150);
            verify(!item.pressed);
            mouseMove(item, 50, 50);
            verify(item.pressed);
            mouseRelease(item, 50, 50);
            compare(clicks.count, 1);
            mousePress(item, 50, 50);
            mouseMove(item, 50, 150);
            mouseRelease(item, 50, 150);
            mouseClick(item, 50, 50, Qt.RightButton);
            compare(clicks.count, 1);
        }

        function test_two_quick_clicks_are_two() {
            mouseDoubleClickSequence(item, 50, 50);
            compare(clicks.count, 2);
            compare(behindClicks.count, 0);
            compare(behindTwice.count, 0);
        }

        function test_space_and_select_press_it_when_they_are_let_go_data() {
            return [{
                    tag: "space",
                    key: Qt.Key_Space
                }, {
                    tag: "select",
                    key: Qt.Key_Select
                }];
        }

        function test_space_and_select_press_it_when_they_are_let_go(data) {
            item.forceActiveFocus(Qt.TabFocusReason);
            keyPress(data.key);
            verify(item.pressed);
            compare(clicks.count, 0);
            keyRelease(data.key);
            verify(!item.pressed);
            compare(clicks.count, 1);
        }

        function test_return_is_left_to_the_room() {
            item.forceActiveFocus(Qt.TabFocusReason);
            keyClick(Qt.Key_Return);
            keyClick(Qt.Key_Enter);
            compare(presses.count, 0);
            compare(clicks.count, 0);
        }

        function test_a_key_held_down_is_let_go_with_the_focus() {
            item.forceActiveFocus(Qt.TabFocusReason);
            keyPress(Qt.Key_Space);
            root.forceActiveFocus();
            verify(!item.pressed);
            keyRelease(Qt.Key_Space);
            compare(clicks.count, 0);
        }

        function test_the_focus_shows_when_a_keyboard_brought_it() {
            item.forceActiveFocus(Qt.TabFocusReason);
            verify(item.visualFocus);
            root.forceActiveFocus();
            verify(!item.visualFocus);
            item.forceActiveFocus(Qt.MouseFocusReason);
            verify(!item.visualFocus);
            const touch = touchEvent(root);
            root.forceActiveFocus();
            touch.press(0, item, 50, 50).commit();
            touch.release(0, item, 50, 50).commit();
            verify(!item.activeFocus);
        }
    }
}
