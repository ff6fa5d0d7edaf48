// The keys of Walk: arrows from part to part, Page Up and Down, the pads by letter, B for the bay after the post, grades and digits, Space as last time.
import QtQuick
import Kneerail.Ui

QtObject {
    id: keyboard

    required property WalkModel walk
    readonly property bool types: walk.pad === WalkModel.CoatingPad
    readonly property bool walls: walk.pad === WalkModel.WallPad
    readonly property bool bays: walk.pad === WalkModel.BayPad
    readonly property bool checks: walk.check.what !== GaugeCheck.Nothing
    readonly property bool finds: walk.pad === WalkModel.FindingPad
    readonly property bool grades: walk.pad === WalkModel.GradePad

    function take(key: int, text: string, modifiers: int): bool {
        if (modifiers & Qt.ControlModifier)
            return keyboard.takeBack(key, modifiers);
        if (keyboard.checks)
            return keyboard.check(key);
        if (key >= Qt.Key_0 && key <= Qt.Key_9)
            return keyboard.number(key - Qt.Key_0);
        return keyboard.step(key) || keyboard.act(key);
    }

    function check(key: int): bool {
        if (key >= Qt.Key_0 && key <= Qt.Key_9)
            keyboard.walk.check.digit(key - Qt.Key_0);
        else if (key === Qt.Key_Minus)
            keyboard.walk.check.sign();
        else if (key === Qt.Key_Backspace)
            keyboard.walk.check.backspace();
        else if (key === Qt.Key_Return || key === Qt.Key_Enter)
            keyboard.walk.check.nextSlot();
        return true;
    }

    function takeBack(key: int, modifiers: int): bool {
        if (key !== Qt.Key_Z)
            return false;
        if (modifiers & Qt.ShiftModifier)
            keyboard.walk.redo();
        else
            keyboard.walk.undo();
        return true;
    }

    function number(digit: int): bool {
        if (keyboard.types)
            keyboard.walk.coating.digit(digit);
        else if (keyboard.walls)
            keyboard.walk.wall.digit(digit);
        else if (keyboard.bays)
            keyboard.walk.bay.digit(digit);
        else if (keyboard.finds)
            keyboard.walk.finding.chooseGrade(digit);
        else if (keyboard.grades && digit >= 1 && digit <= 5)
            keyboard.walk.chooseGrade(digit);
        else
            return false;
        return true;
    }

    function erase() {
        if (keyboard.walls)
            keyboard.walk.wall.backspace();
        else if (keyboard.bays)
            keyboard.walk.bay.backspace();
        else
            keyboard.walk.coating.backspace();
    }

    function nextSlot() {
        if (keyboard.walls)
            keyboard.walk.wall.nextSlot();
        else if (keyboard.bays)
            keyboard.walk.bay.nextSlot();
        else
            keyboard.walk.coating.nextSlot();
    }

    function step(key: int): bool {
        switch (key) {
        case Qt.Key_Right:
        case Qt.Key_Down:
            keyboard.walk.stepPart(1);
            return true;
        case Qt.Key_Left:
        case Qt.Key_Up:
            keyboard.walk.stepPart(-1);
            return true;
        case Qt.Key_PageDown:
            keyboard.walk.stepPost(1);
            return true;
        case Qt.Key_PageUp:
            keyboard.walk.stepPost(-1);
            return true;
        }
        return false;
    }

    function act(key: int): bool {
        switch (key) {
        case Qt.Key_G:
            keyboard.walk.openPad(WalkModel.GradePad);
            return true;
        case Qt.Key_C:
            keyboard.walk.openPad(WalkModel.CoatingPad);
            return true;
        case Qt.Key_T:
            keyboard.walk.openPad(WalkModel.TorquePad);
            return true;
        case Qt.Key_W:
            keyboard.walk.openPad(WalkModel.WallPad);
            return true;
        case Qt.Key_B:
            keyboard.walk.chooseBayAfter();
            return true;
        case Qt.Key_F:
            keyboard.walk.openPad(WalkModel.FindingPad);
            return true;
        case Qt.Key_Backspace:
            keyboard.erase();
            return true;
        case Qt.Key_Return:
        case Qt.Key_Enter:
            if (keyboard.finds)
                keyboard.walk.finding.keep();
            else
                keyboard.nextSlot();
            return true;
        case Qt.Key_Space:
            keyboard.walk.asLastTime(true);
            return true;
        }
        return false;
    }
}
