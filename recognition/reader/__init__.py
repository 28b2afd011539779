"""What does one written line say?"""

from recognition.reader.neural import LinePicture, LineStrokes, NeuralReader
from recognition.reader.weights import ModelFacts

__all__ = ["LinePicture", "LineStrokes", "ModelFacts", "NeuralReader"]
