import QtQuick
import QtTest
import Kneerail.Ui

Item {
    id: root

    width: 500
    height: 200

    InkBar {
        id: bar

        width: 400
    }

    SignalSpy {
        id: undone

        target: bar
        signalName: "undone"
    }

    TestCase {
        name: "InkBar"
        when: windowShown

        function test_it_stands_until_undo_or_its_time() {
            verify(!bar.visible);
            bar.show("F-2 taken off", "always in the log");
            verify(bar.visible);
            compare(bar.Accessible.name, "F-2 taken off");
            const key = findChild(bar, "barAct");
            compare(key.Accessible.name, "Undo: F-2 taken off");
            mouseClick(key);
            compare(undone.count, 1);
            verify(!bar.visible);
        }
    }
}
