"""What scenes of several folders stand on: values with every figure filled in, to be changed where one matters."""
